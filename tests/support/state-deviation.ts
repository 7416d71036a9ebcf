import type { State, StateInput } from "../../src/state/index.js";

/**
 * Largest deviation of one state from another. Enthalpy and entropy are compared on the scales RT and R, because
 * their zero is arbitrary; pressure on p + ρRT, because a liquid's pressure is a small difference of numbers that
 * large; in two phases quality stands for density, because a small quality takes its digits from 1.
 */
export function deviation(found: State, from: State): number {
  const R = from.refrigerant.specificGasConstant;
  const RT = R * from.temperature;
  const amount =
    from.phase === "two-phase"
      ? Math.abs(qualityOf(found, from) - from.quality)
      : Math.abs(found.density / from.density - 1);
  return Math.max(
    amount,
    Math.abs(found.temperature / from.temperature - 1),
    Math.abs(found.pressure - from.pressure) / (from.pressure + from.density * RT),
    Math.abs(found.enthalpy - from.enthalpy) / RT,
    Math.abs(found.entropy - from.entropy) / R,
  );
}

/** A state within rounding of the dome may come back on its other side. */
function qualityOf(found: State, from: State): number {
  if (found.phase === "two-phase") return found.quality;
  return found.density > from.refrigerant.critical.density ? 0 : 1;
}

/**
 * In two phases h and s fix the temperature through g(T) = h − Ts, whose slope is −x Δs − v′ dp/dT. Next to the
 * saturated liquid at low pressure it is so flat that the rounding of h and s alone moves the temperature.
 */
function isFlat(state: State, limit: number): boolean {
  if (state.phase !== "two-phase") return false;
  const { temperature, enthalpy, entropy, quality, latentHeat } = state;
  const rounding = 2 ** -52 * (Math.abs(enthalpy) + Math.abs(temperature * entropy));
  return rounding / (quality * latentHeat) > limit / 1000;
}

/** The pressure that temperature and density give; on the limit it may lie a rounding above it. */
function givenBack({ refrigerant, temperature, density, pressure }: State): number {
  const { maximumPressure } = refrigerant.limits;
  const found = refrigerant.state({ temperature, density }).pressure;
  return pressure <= maximumPressure ? Math.min(found, maximumPressure) : found;
}

/** Every pair of its properties that fixes a state to within a limit. */
export function pairsOf(state: State, limit: number): Record<string, StateInput> {
  const { temperature, pressure, density, enthalpy, entropy, internalEnergy } = state;
  return {
    "p, h": { pressure, enthalpy },
    "p, s": { pressure, entropy },
    "T, ρ": { temperature, density },
    "ρ, u": { density, internalEnergy },
    ...(isFlat(state, limit) ? {} : { "h, s": { enthalpy, entropy } }),
    ...(state.phase === "two-phase"
      ? { "p, x": { pressure, quality: state.quality }, "T, x": { temperature, quality: state.quality } }
      : // By the pressure that the density gives back, not the one that the state was made with.
        { "T, p": { temperature, pressure: givenBack(state) } }),
  };
}
