/**
 * A number that remembers what it measures, at compile time only.
 *
 * A plain `number` is accepted wherever a flavour is asked for and is read as SI; a number of one flavour is
 * refused where another belongs. Arithmetic gives a plain number again, so formulas need no casts. The tag is a
 * string key, not a symbol, so that the ESM and CommonJS declarations agree with each other.
 */
export type Flavoured<Unit extends string> = number & { readonly "~unit"?: Unit };

/** Thermodynamic temperature, K. */
export type Temperature = Flavoured<"K">;
/** A difference of two temperatures, K: superheat, glide, an uncertainty. Not a temperature. */
export type TemperatureDifference = Flavoured<"K difference">;
/** Absolute pressure, Pa. */
export type Pressure = Flavoured<"Pa absolute">;
/** Pressure above (or, negative, below) the local atmosphere, Pa. What a manifold gauge reads. */
export type GaugePressure = Flavoured<"Pa gauge">;
/** A difference of two pressures, Pa: a drop, a rise, an uncertainty. */
export type PressureDifference = Flavoured<"Pa difference">;
/** Density, kg/m3. */
export type Density = Flavoured<"kg/m3">;
/** Energy per mass, J/kg: enthalpy, internal energy, latent heat. */
export type SpecificEnergy = Flavoured<"J/kg">;
/** Entropy or heat capacity per mass, J/(kg K). */
export type SpecificEntropy = Flavoured<"J/(kg K)">;
/** Mass, kg. */
export type Mass = Flavoured<"kg">;
/** Mass per length, kg/m: refrigerant added per metre of line. */
export type LinearDensity = Flavoured<"kg/m">;
/** Length, m. */
export type Length = Flavoured<"m">;
/** Area, m2. */
export type Area = Flavoured<"m2">;
/** Volume, m3. */
export type Volume = Flavoured<"m3">;
/** Duration, s. */
export type Duration = Flavoured<"s">;
/** Speed, m/s. */
export type Speed = Flavoured<"m/s">;
/** Volume flow, m3/s: the displacement of a vacuum pump. */
export type VolumeFlow = Flavoured<"m3/s">;
/** Power, W: heating and cooling capacity, electrical input. */
export type Power = Flavoured<"W">;
/** Torque, N m: how tight a flare nut is drawn. */
export type Torque = Flavoured<"N m">;
