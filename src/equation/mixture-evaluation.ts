/**
 * One evaluation of a mixture's residual Helmholtz energy: reduced quantities, divided by R T with the R of the mixture's
 * first component, `Mixture.R`. L stands for ln δ, T for ln τ: `phiLT` is δτ φ_δτ.
 */
export interface MixtureEvaluation {
  /** Temperature, K. */
  T: number;
  /** Molar density, mol/m3. */
  rho: number;
  /** Mole fractions. */
  readonly x: Float64Array;
  tau: number;
  delta: number;
  phi: number;
  phiL: number;
  phiLL: number;
  phiT: number;
  phiTT: number;
  phiLT: number;
  /** p/(RT), mol/m3. */
  pressure: number;
  /** T ∂(p/RT)/∂T at constant density and composition, mol/m3. */
  pressureT: number;
  /** ∂(p/RT)/∂ρᵢ, dimensionless. */
  readonly pressureBy: Float64Array;
  /** Residual chemical potentials μᵢ/(RT) = ∂(ρφ)/∂ρᵢ. */
  readonly mu: Float64Array;
  /** T ∂μᵢ/∂T at constant concentrations. */
  readonly muT: Float64Array;
  /** ρ ∂μᵢ/∂ρⱼ, row by row; symmetric. */
  readonly hessian: Float64Array;
}

/** A fresh place for an evaluation of so many components. */
export function noMixtureEvaluation(count: number): MixtureEvaluation {
  return {
    T: 0,
    rho: 0,
    x: new Float64Array(count),
    tau: 0,
    delta: 0,
    phi: 0,
    phiL: 0,
    phiLL: 0,
    phiT: 0,
    phiTT: 0,
    phiLT: 0,
    pressure: 0,
    pressureT: 0,
    pressureBy: new Float64Array(count),
    mu: new Float64Array(count),
    muT: new Float64Array(count),
    hessian: new Float64Array(count * count),
  };
}

/**
 * The components' ideal parts at a temperature, each times Rᵢ/R: what a component of concentration ρᵢ adds to the
 * energies of a phase, per ρᵢ.
 */
export interface MixtureIdeal {
  /** a/(RT) without ln ρᵢ. */
  readonly helmholtz: Float64Array;
  /** u/(RT). */
  readonly energy: Float64Array;
  /** cv/R. */
  readonly heatCapacity: Float64Array;
}

/** A fresh place for so many components. */
export function noMixtureIdeal(count: number): MixtureIdeal {
  return {
    helmholtz: new Float64Array(count),
    energy: new Float64Array(count),
    heatCapacity: new Float64Array(count),
  };
}
