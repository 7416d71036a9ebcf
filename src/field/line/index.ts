export * from "./flare.js";
export * from "./flare-diameter.js";
export * from "./friction.js";
export * from "./line-pressure-drop.js";
export * from "./line-size.js";
export * from "./line-velocity.js";
export * from "./oil-return.js";
export * from "./pipe-flow.js";
export {
  type Bore,
  findTube,
  listTubes,
  type Tube,
  type TubeSize,
  tryFindTube,
  tryTubeBore,
  tryTubeVolume,
  tubeBore,
  tubeVolume,
} from "./tube.js";
export * from "./two-phase-gradient.js";
