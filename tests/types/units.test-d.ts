import { describe, expectTypeOf, it } from "vitest";
import {
  bar,
  barDifference,
  barGauge,
  celsius,
  celsiusDifference,
  type Density,
  type Flavoured,
  formatGaugePressure,
  formatPressure,
  formatTemperature,
  fromVacuumReading,
  type GaugePressure,
  gram,
  inBar,
  inBarGauge,
  inCelsius,
  inCelsiusDifference,
  inGram,
  kelvinDifference,
  type LocalAtmosphere,
  localAtmosphere,
  type Mass,
  metre,
  type Outcome,
  type Pressure,
  type PressureDifference,
  type PressureReading,
  parsePressure,
  parseTemperature,
  pressureAtAltitude,
  type Temperature,
  type TemperatureDifference,
  toAbsolute,
  toGauge,
  tryParseTemperature,
} from "../../src/units/index.js";

describe("flavours", () => {
  it("converters make what their name says", () => {
    expectTypeOf(celsius(40)).toEqualTypeOf<Temperature>();
    expectTypeOf(celsiusDifference(5)).toEqualTypeOf<TemperatureDifference>();
    expectTypeOf(bar(9)).toEqualTypeOf<Pressure>();
    expectTypeOf(barGauge(8)).toEqualTypeOf<GaugePressure>();
    expectTypeOf(barDifference(0.2)).toEqualTypeOf<PressureDifference>();
    expectTypeOf(inBar(1e5)).toEqualTypeOf<number>();
  });

  it("a pressure is no temperature", () => {
    expectTypeOf<Pressure>().not.toExtend<Temperature>();
    // @ts-expect-error a pressure where a temperature belongs
    inCelsius(bar(9));
    // @ts-expect-error a temperature where a pressure belongs
    inBar(celsius(40));
    // @ts-expect-error a temperature where a length belongs
    pressureAtAltitude(celsius(40));
  });

  it("a difference is no temperature, nor a temperature a difference", () => {
    expectTypeOf<TemperatureDifference>().not.toExtend<Temperature>();
    expectTypeOf<Temperature>().not.toExtend<TemperatureDifference>();
    // @ts-expect-error a difference where a temperature belongs
    inCelsius(kelvinDifference(5));
    // @ts-expect-error a temperature where a difference belongs
    inCelsiusDifference(celsius(5));
    // @ts-expect-error a difference cannot be printed as a temperature
    formatTemperature(celsiusDifference(5), { unit: "celsius", digits: 1 });
  });

  it("gauge is no absolute, nor absolute gauge, nor either a difference", () => {
    expectTypeOf<GaugePressure>().not.toExtend<Pressure>();
    expectTypeOf<Pressure>().not.toExtend<GaugePressure>();
    expectTypeOf<PressureDifference>().not.toExtend<Pressure>();
    expectTypeOf<PressureDifference>().not.toExtend<GaugePressure>();
    // @ts-expect-error a gauge pressure where an absolute one belongs
    inBar(barGauge(8));
    // @ts-expect-error an absolute pressure where a gauge one belongs
    inBarGauge(bar(9));
    // @ts-expect-error already absolute
    toAbsolute(bar(9), bar(1));
    // @ts-expect-error already gauge
    toGauge(barGauge(8), bar(1));
    // @ts-expect-error the local atmosphere is absolute
    toAbsolute(barGauge(8), barGauge(1));
    // @ts-expect-error a vacuum printed as a positive number is no gauge pressure
    fromVacuumReading(barGauge(-0.8), bar(1));
    // @ts-expect-error gauge printed as absolute
    formatPressure(barGauge(8), { unit: "bar", digits: 2 });
  });

  it("the local atmosphere has no default", () => {
    // @ts-expect-error no atmosphere
    toAbsolute(barGauge(8));
    // @ts-expect-error no site
    localAtmosphere();
    // @ts-expect-error a reported pressure without the altitude
    localAtmosphere({ from: "sea-level-barometer", pressure: 102000 });
  });

  it("a plain number is accepted everywhere, as SI", () => {
    expectTypeOf<number>().toExtend<Temperature>();
    expectTypeOf<number>().toExtend<GaugePressure>();
    expectTypeOf(inCelsius(313.15)).toEqualTypeOf<number>();
    expectTypeOf(toAbsolute(8e5, 101325)).toEqualTypeOf<Pressure>();
    expectTypeOf(inGram(0.85)).toEqualTypeOf<number>();
  });

  it("every flavour is a number", () => {
    expectTypeOf<Temperature>().toExtend<number>();
    expectTypeOf<Pressure>().toExtend<number>();
    expectTypeOf<Flavoured<"anything">>().toExtend<number>();
  });

  it("arithmetic gives a plain number, which fits anywhere again", () => {
    expectTypeOf(celsius(40) - celsius(35)).toEqualTypeOf<number>();
    expectTypeOf(bar(9) * 2).toEqualTypeOf<number>();
    expectTypeOf(-barGauge(0.8)).toEqualTypeOf<number>();
    expectTypeOf(gram(850) / metre(5)).toEqualTypeOf<number>();
    const superheat: TemperatureDifference = celsius(12) - celsius(5);
    const suction: Temperature = celsius(5) + superheat;
    expectTypeOf(suction).toExtend<Temperature>();
  });

  it("keeps all flavours apart", () => {
    expectTypeOf<Mass>().not.toExtend<Density>();
    // @ts-expect-error a mass where a pressure belongs
    inBar(gram(850));
  });
});

describe("reading and printing", () => {
  it("reading gives the flavour", () => {
    expectTypeOf(parseTemperature("40 °C")).toEqualTypeOf<Temperature>();
    expectTypeOf(tryParseTemperature("40 °C")).toEqualTypeOf<Outcome<Temperature>>();
    expectTypeOf(parsePressure("9.5 bar gauge")).toEqualTypeOf<PressureReading>();
  });

  it("a pressure read from text must be looked at before it is used", () => {
    const reading = parsePressure("9.5 bar gauge");
    // @ts-expect-error it may be a gauge pressure
    inBar(reading.pressure);
    if (reading.kind === "gauge") expectTypeOf(reading.pressure).toEqualTypeOf<GaugePressure>();
    else expectTypeOf(reading.pressure).toEqualTypeOf<Pressure>();
  });

  it("only units of the quantity can be asked for, and unit and digits must be", () => {
    // @ts-expect-error bar is no unit of temperature
    formatTemperature(celsius(40), { unit: "bar", digits: 1 });
    // @ts-expect-error a gauge has no scale in micron
    formatGaugePressure(barGauge(-0.9), { unit: "micron", digits: 0 });
    // @ts-expect-error no digits
    formatPressure(bar(9), { unit: "bar" });
    // @ts-expect-error no unit
    formatPressure(bar(9), { digits: 2 });
  });

  it("a site gives an absolute pressure and its uncertainty as a difference", () => {
    expectTypeOf(
      localAtmosphere({ from: "altitude", altitude: metre(500) }),
    ).toEqualTypeOf<LocalAtmosphere>();
    expectTypeOf<LocalAtmosphere["pressure"]>().toEqualTypeOf<Pressure>();
    expectTypeOf<LocalAtmosphere["standardUncertainty"]>().toEqualTypeOf<PressureDifference>();
  });
});
