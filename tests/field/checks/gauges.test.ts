import { describe } from "vitest";
import {
  combineUncertainties,
  decide,
  deepestVacuum,
  gaugeUncertainty,
  type PressureAccuracy,
  thermometerUncertainty,
} from "../../../src/field/index.js";
import {
  altitudeAtPressure,
  geometricAltitude,
  geopotentialAltitude,
  hectopascal,
  inCentimetreOfMercuryDifference,
  inKilopascal,
  inMegapascalDifference,
  localAtmosphere,
  megapascalGauge,
  pressureAtAltitude,
  psiGauge,
  stationPressure,
  toAbsolute,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const iso2533 = "ISO 2533:1975, lower layer, constants from memory of the standard";

describe("check values: local atmosphere", () => {
  fieldCheck("FP-009", "1000 m geopotential", iso2533, { rel: 1e-6 }, { pascal: 89874.563 }, () => ({
    pascal: pressureAtAltitude(1000),
  }));

  fieldCheck("FP-010", "2000 m geopotential", iso2533, { rel: 1e-6 }, { pascal: 79495.202 }, () => ({
    pascal: pressureAtAltitude(2000),
  }));

  fieldCheck("FP-011", "1000 m geometric", iso2533, { rel: 1e-6 }, { pascal: 89876.278 }, () => ({
    pascal: pressureAtAltitude(geopotentialAltitude(1000)),
  }));

  fieldCheck("FP-012", "altitude of 84555.9940738 Pa", iso2533, { abs: 0.01 }, { metre: 1500 }, () => ({
    metre: altitudeAtPressure(84555.9940738),
  }));

  fieldCheck(
    "FP-013",
    "1020 hPa at sea level, 1500 m geopotential",
    "computed by the layer of ISO 2533:1975",
    { rel: 1e-5 },
    { pascal: 85139.07 },
    () => ({ pascal: stationPressure(hectopascal(1020), 1500) }),
  );
});

describe("check values: gauge and absolute", () => {
  fieldCheck(
    "FP-014",
    "115 psi gauge at 1500 m geopotential, kPa absolute",
    "computed by the layer of ISO 2533:1975",
    { rel: 1e-5 },
    { kilopascal: 877.4531 },
    () => ({ kilopascal: inKilopascal(toAbsolute(psiGauge(115), pressureAtAltitude(1500))) }),
  );

  fieldCheck(
    "FP-015",
    "deepest vacuum reading at 2000 m geopotential, cmHg",
    "computed by the layer of ISO 2533:1975",
    { rel: 1e-5 },
    { centimetreOfMercury: 59.6263 },
    () => {
      const site = localAtmosphere({ from: "altitude", altitude: geometricAltitude(2000) });
      return { centimetreOfMercury: inCentimetreOfMercuryDifference(deepestVacuum(site)) };
    },
  );
});

/** Gauge and a thermometer of ± 1 K on a saturation curve of 33.5 K/MPa. */
function ofSuperheat(accuracy: PressureAccuracy) {
  const gauge = gaugeUncertainty({ accuracy }, megapascalGauge(0.8));
  const thermometer = thermometerUncertainty({ accuracy: { kind: "half-width", halfWidth: 1 } });
  const part = { unit: "", because: "" };
  const combined = combineUncertainties([
    {
      ...part,
      input: "gauge",
      standardUncertainty: gauge.standardUncertainty,
      sensitivity: -33.5e-6,
    },
    { ...part, input: "thermometer", standardUncertainty: thermometer.standardUncertainty, sensitivity: 1 },
  ]);
  return {
    ofGauge: inMegapascalDifference(gauge.standardUncertainty),
    combined: combined.standardUncertainty,
    expanded: combined.expandedUncertainty,
  };
}

describe("check values: uncertainty of superheat", () => {
  const gum = "computed by JCGM 100:2008 (GUM), first order; classes of EN 837-1:1996";

  fieldCheck(
    "FP-016",
    "class 1.6 on a compound scale, MPa and K",
    gum,
    { rel: 1e-4 },
    { ofGauge: 0.0360267, combined: 1.33788, expanded: 2.67576 },
    () =>
      ofSuperheat({
        kind: "accuracy-class",
        accuracyClass: 1.6,
        scaleMinimum: megapascalGauge(-0.1),
        scaleMaximum: megapascalGauge(3.8),
      }),
  );

  fieldCheck(
    "FP-017",
    "0.5 % of 5 MPa, MPa and K",
    gum,
    { rel: 1e-4 },
    { ofGauge: 0.0144338, combined: 0.753084, expanded: 1.50617 },
    () => ofSuperheat({ kind: "percent-of-full-scale", percent: 0.5, fullScale: megapascalGauge(5) }),
  );
});

describe("check values: decision with 1.5 of uncertainty and limits 4 to 8", () => {
  const jcgm106 = "JCGM 106:2012, guard bands (recalled)";
  const at = (value: number) => ({ verdict: decide(value, 1.5, { minimum: 4, maximum: 8 }).verdict });

  fieldCheck("FP-018", "6.0", jcgm106, "exact", { verdict: "pass" }, () => at(6.0));
  fieldCheck("FP-019", "7.2", jcgm106, "exact", { verdict: "inconclusive" }, () => at(7.2));
  fieldCheck("FP-020", "9.6", jcgm106, "exact", { verdict: "fail" }, () => at(9.6));
});
