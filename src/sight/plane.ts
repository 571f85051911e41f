export { horizontalPlane, type Plane as TargetPlane } from '../base/plane.ts';
