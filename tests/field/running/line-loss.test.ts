import { describe, expect, it } from "vitest";
import {
  type LineReading,
  type SuctionLineReading,
  superheat,
  superheatAlongLine,
  trySuperheatAlongLine,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, kilopascalDifference, megapascalGauge } from "../../../src/units/index.js";

const atPort: LineReading = {
  refrigerant: refrigerant("R-32"),
  mode: "cooling",
  port: "compressor-suction",
  pressure: megapascalGauge(0.8),
  lineTemperature: celsius(12),
  atmosphere: { pressure: 101325, standardUncertainty: 100, because: "stated" },
  gauge: { accuracy: { kind: "half-width", halfWidth: 5e3 } },
  thermometer: { accuracy: { kind: "half-width", halfWidth: 0.5 } },
};
const line: SuctionLineReading = {
  atPort,
  coilOutletTemperature: celsius(10),
  lineLoss: kilopascalDifference(20),
  lineLossHalfWidth: kilopascalDifference(5),
};

describe("superheat along a suction line", () => {
  it("is counted at each end from the pressure there", () => {
    const result = superheatAlongLine(line);
    expect(result.atPort).toEqual(superheat(atPort));
    expect(result.coilPressure).toBe(921325);
    const dew = (pressure: number) => atPort.refrigerant.dew({ pressure }).temperature;
    expect(result.atCoil.value).toBeWithin(celsius(10) - dew(921325), 1e-9);
    expect(result.equivalentLoss).toBeWithin(dew(921325) - dew(901325), 1e-9);
    // 20 kPa on about 35.7 K/MPa, between 38.40 at 0 °C and 34.09 at 5 °C.
    expect(result.equivalentLoss).toBeGreaterThan(20e3 * 34.09e-6);
    expect(result.equivalentLoss).toBeLessThan(20e3 * 38.4e-6);
    expect(result.warming).toBe(2);
    expect(result.atPort.value).toBeWithin(
      result.atCoil.value + result.warming + result.equivalentLoss,
      1e-9,
    );
    expect(result.warnings).toEqual([]);
    expect(result.because).toMatch(/20 kPa of line, worth 0\.7\d+ K/);
  });

  it("counts how well the loss is known, at the coil alone", () => {
    const { atCoil, atPort: port } = superheatAlongLine(line);
    expect(port.budget.map(({ input }) => input)).not.toContain("line-loss");
    const part = atCoil.budget.find(({ input }) => input === "line-loss");
    expect(part?.contribution).toBeWithin((atCoil.slope * 5e3) / Math.sqrt(3), 1e-12);
    expect(atCoil.assumptions.join(" ")).toContain("at the same time");
    expect(superheatAlongLine({ ...line, lineLossHalfWidth: 0 }).atCoil.expandedUncertainty).toBeLessThan(
      atCoil.expandedUncertainty,
    );
  });

  it("warns of a line that costs more than is usual, 1 K (common practice, no source)", () => {
    const codes = (kPa: number) =>
      superheatAlongLine({ ...line, lineLoss: kilopascalDifference(kPa) }).warnings.map(({ code }) => code);
    expect(codes(25)).toEqual([]);
    expect(codes(35)).toEqual(["large-line-loss"]);
  });

  it("is the same at both ends of no line at all", () => {
    const none = { ...line, lineLoss: 0, lineLossHalfWidth: 0, coilOutletTemperature: celsius(12) };
    const { atCoil, atPort: port, equivalentLoss } = superheatAlongLine(none);
    expect(atCoil.value).toBe(port.value);
    expect(equivalentLoss).toBe(0);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["an empty line", {}, ["atPort", "coilOutletTemperature", "lineLoss", "lineLossHalfWidth"]],
    ["a loss below 0", { ...line, lineLoss: -1 }, ["lineLoss"]],
    ["a coil at 0 K", { ...line, coilOutletTemperature: 0 }, ["coilOutletTemperature"]],
    ["a port on the high side", { ...line, atPort: { ...atPort, port: "liquid-line" } }, ["port"]],
    [
      "the gas line in heating",
      { ...line, atPort: { ...atPort, mode: "heating", port: "gas-line" } },
      ["port"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = trySuperheatAlongLine(input as SuctionLineReading);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
