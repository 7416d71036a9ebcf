import type { Fluid } from "../../catalogue/index.js";
import { type Evaluation, noEvaluation, noMixtureEvaluation } from "../../equation/index.js";
import { NotConvergedError } from "../../units/index.js";
import { Envelope } from "./envelope.js";
import type { MixtureModel } from "./mixture-model.js";

/** How far below the components' ranges a boundary is followed, for those who ask to extrapolate. */
const coldReaches = [0.85, 0.92, 1];

/** A mixture model at one composition, with what solvers find out about it once. */
export class BlendModel {
  readonly system: MixtureModel;
  /** Mole fractions. */
  readonly z: Float64Array;
  /** Designation or description, for errors. */
  readonly name: string;
  /** Gas constant at this composition, J/(mol K). */
  readonly R: number;
  /** Molar mass, kg/mol. */
  readonly molarMass: number;
  readonly limits: Fluid["limits"];
  /** Where properties of one phase are evaluated. */
  readonly at: Evaluation = noEvaluation();
  #envelope: Envelope | undefined;

  constructor(system: MixtureModel, z: Float64Array, name: string) {
    this.system = system;
    this.z = z;
    this.name = name;
    this.R = system.liquid.mixture.gasConstantOf(z);
    this.molarMass = system.liquid.mixture.molarMassOf(z);
    this.limits = system.limits;
  }

  /**
   * The boundary of the two-phase region, followed on first use in a few milliseconds.
   *
   * @throws {@link NotConvergedError} where it cannot be followed.
   */
  get envelope(): Envelope {
    if (this.#envelope === undefined) {
      const { minimumTemperature } = this.limits;
      for (const reach of coldReaches) {
        this.#envelope ??= Envelope.of(this.system, this.z, reach * minimumTemperature);
      }
      if (this.#envelope === undefined) {
        throw new NotConvergedError(`the bubble and dew lines of ${this.name}`, { minimumTemperature });
      }
    }
    return this.#envelope;
  }

  /** Evaluates one phase of the blend's own composition. */
  evaluate(T: number, rho: number): Evaluation {
    return this.evaluatePhase(T, rho, this.z);
  }

  /** Evaluates one phase of any composition of the same components. */
  evaluatePhase(T: number, rho: number, x: Float64Array): Evaluation {
    const { mixture, at } = this.system.vapour;
    mixture.setComposition(x);
    mixture.evaluateFixed(T, rho, at);
    mixture.toEvaluation(at, this.at);
    return this.at;
  }

  /** Chemical potentials of one phase that depend on composition and density, over RT: ln of ρᵢ with residual part. */
  logFugacityCoefficients(T: number, rho: number, x: Float64Array): Float64Array {
    const { mixture } = this.system.vapour;
    const at = noMixtureEvaluation(this.system.count);
    mixture.evaluate(
      T,
      x.map((xi) => xi * rho),
      at,
    );
    // ln φᵢ = μᵢʳ/(RᵢT) − ln Z with Z = p/(ρ R T): fᵢ = xᵢφᵢp.
    const Z = at.pressure / rho;
    return at.mu.map((mu, i) => mu / mixture.ratio[i]! - Math.log(Z));
  }
}
