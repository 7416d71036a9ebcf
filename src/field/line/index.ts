export {
  type Bore,
  findTube,
  listTubes,
  type Tube,
  type TubeSize,
  tryFindTube,
  tubeBore,
  tubeVolume,
} from "./tube.js";
