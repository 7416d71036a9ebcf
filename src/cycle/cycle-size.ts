import type { State } from "../state/index.js";
import type { InputCheck, Power, VolumeFlow } from "../units/index.js";
import type { RefrigerantFlow } from "./cycle-arithmetic.js";
import { checkEfficiency } from "./efficiency-check.js";

/** How large the machine is: by one of these. */
export type CycleSize =
  | {
      /** Refrigerant that goes round, kg/s. */
      readonly massFlow: RefrigerantFlow;
      /** Vapour drawn in over the volume swept, above 0 and at most 1; gives the displacement. */
      readonly volumetricEfficiency?: number;
    }
  | {
      /** Cooling capacity, W. */
      readonly coolingCapacity: Power;
      /** As above. */
      readonly volumetricEfficiency?: number;
    }
  | {
      /** Heating capacity, W. */
      readonly heatingCapacity: Power;
      /** As above. */
      readonly volumetricEfficiency?: number;
    }
  | {
      /** Volume swept by the compressor, m3/s. */
      readonly displacement: VolumeFlow;
      /** As above; a displacement says nothing without it. */
      readonly volumetricEfficiency: number;
    };

const SIZES = ["massFlow", "coolingCapacity", "heatingCapacity", "displacement"] as const;

/** Records what is wrong with a size. */
export function checkSize(check: InputCheck, size: CycleSize): void {
  const expected = `an object with one of ${SIZES.join(", ")}`;
  if (!check.require(typeof size === "object" && size !== null, "size", size, expected)) return;
  const fields = size as Readonly<Record<string, unknown>>;
  const given = SIZES.filter((name) => fields[name] !== undefined);
  if (check.require(given.length === 1, "size", size, expected)) {
    check.positive(`size.${given[0]}`, fields[given[0]!]);
  }
  if (size.volumetricEfficiency !== undefined || given.includes("displacement")) {
    checkEfficiency(check, "size.volumetricEfficiency", size.volumetricEfficiency);
  }
}

/** Flow of refrigerant and volume swept, from whichever was given; undefined where it was not enough. */
export function sizeOf(
  size: CycleSize | undefined,
  {
    suction,
    discharge,
    liquid,
  }: { readonly suction: State; readonly discharge: State; readonly liquid: State },
): { readonly massFlow: RefrigerantFlow | undefined; readonly displacement: VolumeFlow | undefined } {
  if (size === undefined) return { massFlow: undefined, displacement: undefined };
  const { massFlow, coolingCapacity, heatingCapacity, displacement, volumetricEfficiency }: AnySize = size;
  // Checked: one of the four is there, and with a displacement the efficiency.
  const flow =
    massFlow ??
    (coolingCapacity !== undefined
      ? coolingCapacity / (suction.enthalpy - liquid.enthalpy)
      : heatingCapacity !== undefined
        ? heatingCapacity / (discharge.enthalpy - liquid.enthalpy)
        : displacement! * volumetricEfficiency! * suction.density);
  const swept =
    volumetricEfficiency === undefined ? undefined : flow / (suction.density * volumetricEfficiency);
  return { massFlow: flow, displacement: displacement ?? swept };
}

interface AnySize {
  readonly massFlow?: RefrigerantFlow;
  readonly coolingCapacity?: Power;
  readonly heatingCapacity?: Power;
  readonly displacement?: VolumeFlow;
  readonly volumetricEfficiency?: number;
}
