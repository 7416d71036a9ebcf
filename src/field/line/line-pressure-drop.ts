import data from "../../../data/field/piping.json" with { type: "json" };
import type { Refrigerant, SinglePhaseState, State } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Length,
  NoSuchStateError,
  type Outcome,
  OutOfRangeError,
  type Pressure,
  type PressureDifference,
  requireObject,
  type Speed,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import { shown, shownKilopascal } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { DRAWN_COPPER_ROUGHNESS, pipeFlow } from "./pipe-flow.js";
import { checkTubeSize, type TubeSize, tubeBore } from "./tube.js";

/** Faster than this part of the speed of sound the gas cools by its own speed, which is not counted here. */
const FASTEST = 0.3;

/** A line full of gas or of liquid. */
export interface RefrigerantLine {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** What the line carries; its state at the inlet has to agree. */
  readonly carries: "gas" | "liquid";
  /** Absolute pressure at the inlet, Pa. */
  readonly pressure: Pressure;
  /** Temperature at the inlet, K. */
  readonly temperature: Temperature;
  /** Mass flow, kg/s. */
  readonly massFlow: number;
  /** Dynamic viscosity at the inlet, Pa s; this library has no equation for it. */
  readonly viscosity: number;
  /** The tube. */
  readonly tube: TubeSize;
  /** Length, m, with the equivalent lengths of all fittings that `elbows` does not count. */
  readonly length: Length;
  /** Number of elbows, each counted by the size of the tube as {@link elbowLength} says; left out: none. */
  readonly elbows?: number;
  /** Roughness of the wall, m; drawn copper if left out. */
  readonly roughness?: Length;
}

/** What a line costs. */
export interface LinePressureDrop {
  /** Velocity at the inlet, m/s. */
  readonly velocity: Speed;
  /** Velocity at the outlet, m/s. */
  readonly outletVelocity: Speed;
  /** Reynolds number at the inlet. */
  readonly reynolds: number;
  /** Loss of pressure, Pa. */
  readonly pressureDrop: PressureDifference;
  /** The same as a loss of saturation temperature, K: of a gas at the dew, of a liquid at the bubble point. */
  readonly temperatureLoss: TemperatureDifference;
  /** In how many steps the line was computed. */
  readonly steps: number;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers it rests on. */
  readonly because: string;
}

/**
 * Loss of pressure of a refrigerant line, and what that is worth in kelvin of saturation.
 *
 * Friction is taken by the mean of both ends, what it costs to speed the fluid up is added. A line that loses less than 5 % of
 * its pressure is computed at once; a longer one in steps of at most 1 %, the gas expanding at constant enthalpy.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link NoSuchStateError} `no-such-state` where the inlet is not the phase that the line carries.
 * @throws {@link OutOfRangeError} `out-of-range` where the gas comes near the speed of sound: the tube is too thin; for
 *   elbows of a size that is not printed.
 * @source Darcy and Weisbach; friction factor: Churchill, S. W., Chem. Eng. 84 (1977) no. 24, 91 (recalled); saturation
 *   from the equation of state
 */
export function linePressureDrop(line: RefrigerantLine): LinePressureDrop {
  checkLine(line);
  const { refrigerant, carries, pressure, temperature, massFlow, viscosity, tube } = line;
  const length = line.length + lengthOfElbows(line);
  const roughness = line.roughness ?? DRAWN_COPPER_ROUGHNESS;
  const { innerDiameter } = tubeBore(tube);
  const inlet = inPhase(refrigerant.state({ temperature, pressure }), carries);
  const flowOver = (state: SinglePhaseState, part: Length) =>
    pipeFlow({
      massFlow,
      density: state.density,
      viscosity,
      innerDiameter,
      length: part,
      roughness,
    });
  const whole = flowOver(inlet, length);
  requireSubsonic(whole.velocity, inlet);
  const limit = data.incompressible.fractionOfPressure;
  const isShort = whole.pressureDrop < limit * pressure;
  const steps = isShort ? 1 : Math.ceil(whole.pressureDrop / (0.2 * limit * pressure));
  const massFlux = inlet.density * whole.velocity;
  const after = (drop: PressureDifference, state: SinglePhaseState): SinglePhaseState => {
    const next = state.pressure - drop;
    if (!(next > 0)) throw tooThin(whole.velocity, inlet);
    return inPhase(refrigerant.state({ pressure: next, enthalpy: inlet.enthalpy }), carries);
  };
  let state = inlet;
  let outletVelocity = whole.velocity;
  for (let step = 0; step < steps; step++) {
    const first = flowOver(state, length / steps).pressureDrop;
    const guess = after(first, state);
    // Friction by the mean of both ends, and the pressure that it takes to speed the gas up.
    const friction = (first + flowOver(guess, length / steps).pressureDrop) / 2;
    const acceleration = massFlux * massFlux * (1 / guess.density - 1 / state.density);
    state = after(friction + acceleration, state);
    outletVelocity = flowOver(state, 0).velocity;
    requireSubsonic(outletVelocity, state);
  }
  const pressureDrop = pressure - state.pressure;
  const saturated = (p: Pressure): Temperature =>
    refrigerant[carries === "gas" ? "dew" : "bubble"]({ pressure: p }).temperature;
  const temperatureLoss = saturated(pressure) - saturated(state.pressure);
  return {
    velocity: whole.velocity,
    outletVelocity,
    reynolds: whole.reynolds,
    pressureDrop,
    temperatureLoss,
    steps,
    assumptions: [
      "The line is level and loses no heat.",
      "The viscosity that was given holds along the whole line.",
    ],
    because:
      `${shown(whole.velocity)} m/s in ${shown(innerDiameter * 1000)} mm, Re ${shown(whole.reynolds)}: ` +
      `${shownKilopascal(pressureDrop)} over ${shown(length)} m, ${shown(temperatureLoss)} K of saturation`,
  };
}

/** As {@link linePressureDrop}, without throwing. */
export function tryLinePressureDrop(line: RefrigerantLine): Outcome<LinePressureDrop> {
  return attempt(() => linePressureDrop(line));
}

/**
 * Equivalent length of an elbow, m, as printed for a size of tube.
 *
 * @param outerDiameter - Of the tube, m.
 * @throws {@link OutOfRangeError} `out-of-range` beyond the sizes that are printed; between two of them the next larger
 *   one counts.
 * @source printed service manual of split units
 */
export function elbowLength(outerDiameter: Length): Length {
  const check = new InputCheck();
  check.positive("outerDiameter", outerDiameter);
  check.finish();
  const sizes = data.elbows;
  const found = sizes.find((each) => outerDiameter <= each.outerDiameter + data.elbowMatch.value);
  const smallest = sizes[0]!.outerDiameter - data.elbowMatch.value;
  if (found !== undefined && outerDiameter >= smallest) return found.equivalentLength;
  throw new OutOfRangeError({
    quantity: "outerDiameter",
    value: outerDiameter,
    minimum: smallest,
    maximum: sizes[sizes.length - 1]!.outerDiameter,
    unit: "m",
    subject: "printed equivalent lengths of elbows",
  });
}

/** As {@link elbowLength}, without throwing. */
export function tryElbowLength(outerDiameter: Length): Outcome<Length> {
  return attempt(() => elbowLength(outerDiameter));
}

function lengthOfElbows({ elbows, tube }: RefrigerantLine): Length {
  return elbows === undefined || elbows === 0 ? 0 : elbows * elbowLength(tube.outerDiameter);
}

function checkLine(line: RefrigerantLine): void {
  requireObject("", line, "a refrigerant line");
  const check = new InputCheck();
  const { refrigerant } = line;
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.oneOf("carries", line.carries, ["gas", "liquid"]);
  for (const name of ["pressure", "temperature", "massFlow", "viscosity"] as const)
    check.positive(name, line[name]);
  check.notNegative("length", line.length);
  const { elbows, roughness } = line;
  if (elbows !== undefined) {
    check.require(Number.isInteger(elbows) && elbows >= 0, "elbows", elbows, "a whole number, 0 or above");
  }
  if (roughness !== undefined) check.notNegative("roughness", roughness);
  checkTubeSize(check, "tube", line.tube);
  check.finish();
}

function inPhase(state: State, carries: "gas" | "liquid"): SinglePhaseState {
  const { phase, temperature, pressure } = state;
  const fits = carries === "liquid" ? phase === "liquid" : phase === "vapour" || phase === "supercritical";
  if (fits) return state as SinglePhaseState;
  throw new NoSuchStateError(
    { temperature, pressure },
    `the line carries ${carries}, but the refrigerant is ${phase} here`,
  );
}

function requireSubsonic(velocity: Speed, state: SinglePhaseState): void {
  if (!(velocity <= FASTEST * state.speedOfSound)) throw tooThin(velocity, state);
}

function tooThin(velocity: Speed, state: SinglePhaseState): OutOfRangeError {
  return new OutOfRangeError({
    quantity: "velocity",
    value: velocity,
    minimum: 0,
    maximum: FASTEST * state.speedOfSound,
    unit: "m/s",
    subject: "a line without choking",
    hint: "take a wider tube",
  });
}
