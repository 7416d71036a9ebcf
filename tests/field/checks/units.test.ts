import { describe } from "vitest";
import {
  cubicFootPerMinute,
  inchOfMercury,
  inLitrePerSecond,
  inMegapascal,
  inMicron,
  kilogramForcePerSquareCentimetre,
  micron,
  millimetreOfMercury,
  millimetreOfMercuryGauge,
  pascal,
  psi,
  toAbsolute,
  torr,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

describe("check values: units", () => {
  fieldCheck(
    "FP-001",
    "1 psi in Pa",
    "exact definitions of pound-force and inch",
    { rel: 1e-9 },
    { pascal: 6894.7572932 },
    () => ({ pascal: psi(1) }),
  );

  fieldCheck(
    "FP-002",
    "1 inHg in Pa",
    "conventional: 25.4 mm of 13.5951 g/cm3 under 9.80665 m/s2",
    { rel: 1e-9 },
    { pascal: 3386.3886403 },
    () => ({ pascal: inchOfMercury(1) }),
  );

  fieldCheck(
    "FP-003",
    "1 Torr in Pa",
    "definition, 101325/760",
    { rel: 1e-9 },
    { pascal: 133.32236842 },
    () => ({
      pascal: torr(1),
    }),
  );

  fieldCheck(
    "FP-004",
    "42 kgf/cm2 in MPa",
    "definition, 98066.5 Pa exactly",
    { rel: 1e-9 },
    { megapascal: 4.118793 },
    () => ({ megapascal: inMegapascal(kilogramForcePerSquareCentimetre(42)) }),
  );

  fieldCheck(
    "FP-005",
    "1 CFM in L/s",
    "definition of the foot",
    { rel: 1e-9 },
    { litrePerSecond: 0.4719474432 },
    () => ({
      litrePerSecond: inLitrePerSecond(cubicFootPerMinute(1)),
    }),
  );

  fieldCheck(
    "FP-006",
    "500 micron in Pa",
    "a micron is 1 mTorr; µmHg differs by less than the tolerance",
    { rel: 1e-6 },
    { pascal: 66.661184 },
    () => ({ pascal: micron(500) }),
  );

  fieldCheck(
    "FP-007",
    "270 Pa in micron",
    "computed from the definition",
    { rel: 1e-6 },
    { micron: 2025.1665 },
    () => ({
      micron: inMicron(pascal(270)),
    }),
  );

  fieldCheck(
    "FP-008",
    "−755 mmHg on a gauge at 760 mmHg, Pa absolute",
    "computed; a printed installation manual rounds it to 667 Pa, 5 Torr",
    { abs: 0.05 },
    { pascal: 666.6119 },
    () => ({ pascal: toAbsolute(millimetreOfMercuryGauge(-755), millimetreOfMercury(760)) }),
  );
});
