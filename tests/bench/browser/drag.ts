import demo from '../../../shared/plans/demo.plan.json?raw';
import type { Assessment, Question } from '../../../src/assess/assessment.ts';
import { coverCamera } from '../../../src/assess/coverCamera.ts';
import { groundOf, Obstacles } from '../../../src/assess/ground.ts';
import type { Scene } from '../../../src/assess/scene.ts';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { Scratch } from '../../../src/coverage/cells.ts';
import type { CameraCoverage } from '../../../src/coverage/coverage.ts';
import type { Target } from '../../../src/coverage/target.ts';
import { aimCamera } from '../../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { askedOfCells, cellLabels, type CellLabels } from '../../../src/view3d/wash/cellLabels.ts';
import { benchScene, type SceneName } from '../scenes.ts';

/** Times of the steps of one camera that is dragged, ms. */
export interface Dragged {
  readonly scene: string;
  readonly camera: string;
  readonly target: Target['kind'];
  readonly cells: number;
  readonly steps: readonly number[];
}

const [WARM, STEPS] = [40, 120];
const FACE: Target = { kind: 'face', height: 1.6 };
const TARGETS: readonly Target[] = [{ kind: 'ground', height: 0 }, FACE];

/** To and fro by some degrees, never a tilt that was there before. */
const tiltOf = (tilt: number, step: number): number => tilt + 4 * Math.sin(step / 9) + step * 1e-6;

/** Hands what the picture draws of a camera that moved to the graphics card. */
type Upload = (coverage: CameraCoverage, labels: CellLabels | null) => void;

/**
 * A WebGL2 context to which is uploaded what the picture uploads for a camera that has moved: the triangles of its frame and
 * of what it sees, relative to its foot, and labels of cells where the shader that evaluates the lens has to ask them.
 */
function uploader(): Upload {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [64, 64];
  const gl = canvas.getContext('webgl2');
  if (gl === null) throw new Error('this browser has no WebGL2');
  const buffers = [0, 1, 2].map(() => ({ buffer: gl.createBuffer(), room: 0 }));
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
  return ({ camera, sight }, labels) => {
    const { frame, seen, beyondScreens } = sight;
    const through = seen === beyondScreens ? new Float64Array(0) : beyondScreens.triangles;
    [frame, through, seen.triangles].forEach((corners, at) => {
      const one = buffers[at];
      if (one === undefined) return;
      const places = Float32Array.from(corners, (n, axis) => n - (camera.eye[axis % 2] ?? 0));
      gl.bindBuffer(gl.ARRAY_BUFFER, one.buffer);
      if (places.length > one.room) {
        one.room = places.length * 2;
        gl.bufferData(gl.ARRAY_BUFFER, one.room * 4, gl.DYNAMIC_DRAW);
      }
      gl.bufferSubData(gl.ARRAY_BUFFER, 0, places);
    });
    if (labels !== null) {
      const { columns, rows } = labels.grid;
      gl.texImage2D(gl.TEXTURE_2D, 0, gl.R8, columns, rows, 0, gl.RED, gl.UNSIGNED_BYTE, labels.labels);
    }
    gl.flush();
  };
}

const frame = (): Promise<void> => new Promise((done) => requestAnimationFrame(() => done()));

/** Runs a step a frame, as a drag does, and times its script. */
async function timed(step: (at: number) => void): Promise<readonly number[]> {
  const times: number[] = [];
  for (let at = 0; at < WARM + STEPS; at += 1) {
    await frame();
    const start = performance.now();
    step(at);
    if (at >= WARM) times.push(performance.now() - start);
  }
  return times;
}

async function demoPlan(upload: Upload): Promise<readonly Dragged[]> {
  const read = readPlan(demo);
  if (!read.ok) throw new Error('the demo plan cannot be read');
  const plan: Plan = read.value;
  const found: Dragged[] = [];
  for (const id of plan.cameraOrder)
    for (const target of TARGETS) {
      const session = createSession();
      const question: Question = { target, alone: null, situation: null, causes: 'quick' };
      const tilt = plan.cameras[id]?.tilt ?? 0;
      let cells = 0;
      const steps = await timed((at) => {
        const moved = aimCamera(plan, id, { tilt: tiltOf(tilt, at) });
        const assessment = runSteps(session.steps(moved, question, at));
        const own = assessment.cameras.find(({ camera }) => camera.id === id);
        if (own === undefined) return;
        const { columns, rows } = own.cells.grid;
        cells = columns * rows;
        const asked = askedOfCells(assessment);
        upload(own, asked === 'nothing' ? null : cellLabels(assessment, assessment.cameras, asked));
      });
      found.push({ scene: 'demo plan', camera: id, target: target.kind, cells, steps });
    }
  return found;
}

/** Bands and limits as the demo plan has them. */
function judging(): Pick<Assessment, 'edition' | 'faceCaps'> {
  const read = readPlan(demo);
  if (!read.ok) throw new Error('the demo plan cannot be read');
  const question: Question = { target: FACE, alone: null, situation: null, causes: 'quick' };
  return runSteps(createSession().steps(read.value, question, 0));
}

async function sceneSteps(name: SceneName, upload: Upload): Promise<readonly Dragged[]> {
  const { edition, faceCaps } = judging();
  const { half, solids, cameras } = benchScene(name);
  const scene: Scene = {
    situation: null,
    night: null,
    ground: 0,
    solids,
    cameras,
    fixings: [],
    board: { left: -half[0], bottom: -half[1], right: half[0], top: half[1] },
    boundary: null,
    closing: 30,
    patches: [],
    faults: [],
  };
  const obstacles = new Obstacles(solids);
  const ground = groundOf(scene, FACE.height);
  const scratch = new Scratch();
  const by = { target: FACE, bands: edition.bands, caps: faceCaps, causes: 'quick' } as const;
  const found: Dragged[] = [];
  for (const camera of cameras) {
    const steps = await timed((at) => {
      const moved = { ...camera, tilt: tiltOf(camera.tilt, at) };
      upload(coverCamera(moved, by, obstacles, ground, scratch).coverage, null);
    });
    const cells = ground.grid.columns * ground.grid.rows;
    found.push({ scene: name, camera: camera.id, target: FACE.kind, cells, steps });
  }
  return found;
}

const NAMES: readonly SceneName[] = ['S1 house', 'S2 street', 'S3 town'];

/** All of it, for the bench that opened this page. */
async function dragged(): Promise<readonly Dragged[]> {
  const upload = uploader();
  const found = [...(await demoPlan(upload))];
  for (const name of NAMES) found.push(...(await sceneSteps(name, upload)));
  return found;
}

Reflect.set(globalThis, 'dragged', dragged);
