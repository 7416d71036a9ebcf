import { describe, expect, it } from "vitest";
import {
  altitudeAtPressure,
  atmosphere,
  cubicFootPerMinute,
  geopotentialAltitude,
  hectopascal,
  inCentimetreOfMercury,
  inchOfMercury,
  inKilopascal,
  inLitrePerSecond,
  inMegapascal,
  inMicron,
  kilogramForcePerSquareCentimetre,
  micron,
  millimetreOfMercury,
  millimetreOfMercuryGauge,
  pascal,
  pressureAtAltitude,
  psi,
  psiGauge,
  stationPressure,
  toAbsolute,
  torr,
} from "../../src/units/index.js";

/*
 * Check values of the field procedures, by their numbers. A tolerance is the rounding of the expected value unless
 * said otherwise. "Computed" means: worked out by hand from the definition named, not read in a book.
 */
describe("check values: units", () => {
  it("FP-001: 1 psi in Pa (exact definitions of pound-force and inch; 11 digits, 1e-9)", () => {
    expect(psi(1)).toBeWithin(6894.7572932, 1e-9);
  });

  it("FP-002: 1 inHg in Pa (conventional: 25.4 mm, 13.5951 g/cm3, 9.80665 m/s2; 1e-9)", () => {
    expect(inchOfMercury(1)).toBeWithin(3386.3886403, 1e-9);
  });

  it("FP-003: 1 Torr in Pa (101325/760; 1e-9)", () => {
    expect(torr(1)).toBeWithin(133.32236842, 1e-9);
  });

  it("FP-004: 42 kgf/cm2 in MPa (98066.5 Pa, exact; 1e-9)", () => {
    const pressure = inMegapascal(kilogramForcePerSquareCentimetre(42));
    expect(pressure).toBeWithin(4.118793, 1e-9);
    // Printed installation manual of a split unit: "4.15 MPa (42 kgf/cm2)". Such pairs are no equations: 0.75 % apart.
    expect(pressure).not.toBeWithin(4.15, 0.007);
    expect(pressure).toBeWithin(4.15, 0.0076);
  });

  it("FP-005: 1 CFM in L/s (exact foot; 1e-9)", () => {
    expect(inLitrePerSecond(cubicFootPerMinute(1))).toBeWithin(0.4719474432, 1e-9);
  });

  it("FP-006: 500 micron in Pa (1 micron = 1 mTorr; 1e-6, more than mTorr and µmHg differ)", () => {
    expect(micron(500)).toBeWithin(66.661184, 1e-6);
  });

  it("FP-007: 270 Pa in micron (computed; 1e-6)", () => {
    expect(inMicron(pascal(270))).toBeWithin(2025.1665, 1e-6);
  });
});

describe("check values: vacuum", () => {
  it("FP-008: −755 mmHg on a gauge at 760 mmHg (0.05 Pa; a printed installation manual rounds it to 667 Pa, 5 Torr)", () => {
    const pressure = toAbsolute(millimetreOfMercuryGauge(-755), millimetreOfMercury(760));
    expect(Math.abs(pressure - 666.6119)).toBeLessThan(0.05);
    expect(pressure).toRoundTo("667");
  });

  it("FP-015: deepest vacuum reading at 2000 m geopotential, cmHg (computed; 1e-5)", () => {
    expect(inCentimetreOfMercury(pressureAtAltitude(2000))).toBeWithin(59.6263, 1e-5);
  });
});

describe("check values: local atmosphere (ISO 2533:1975, constants from memory of the standard)", () => {
  it("FP-009: 1000 m geopotential (1e-6)", () => {
    expect(pressureAtAltitude(1000)).toBeWithin(89874.563, 1e-6);
  });

  it("FP-010: 2000 m geopotential (1e-6)", () => {
    expect(pressureAtAltitude(2000)).toBeWithin(79495.202, 1e-6);
  });

  it("FP-011: 1000 m geometric (1e-6)", () => {
    expect(pressureAtAltitude(geopotentialAltitude(1000))).toBeWithin(89876.278, 1e-6);
  });

  it("FP-012: altitude of 84555.9940738 Pa (0.01 m)", () => {
    expect(Math.abs(altitudeAtPressure(84555.9940738) - 1500)).toBeLessThan(0.01);
  });

  it("FP-013: QNH 1020 hPa at 1500 m geopotential (computed; 1e-5)", () => {
    expect(stationPressure(hectopascal(1020), 1500)).toBeWithin(85139.07, 1e-5);
  });

  it("FP-014: 115 psi gauge at 1500 m geopotential, kPa absolute (computed; 1e-5)", () => {
    const local = pressureAtAltitude(1500);
    expect(inKilopascal(toAbsolute(psiGauge(115), local))).toBeWithin(877.4531, 1e-5);
    // Sea level taken for granted would be 1.9 % off.
    expect(inKilopascal(toAbsolute(psiGauge(115), atmosphere(1)))).not.toBeWithin(877.4531, 0.018);
  });
});
