/*
 * Source: three 0.187.0 (npm, MIT), a general library for drawing, and the depth buffer of WebGL in Chromium's software renderer; run here.
 * It shares with the engine nothing but the triangles: the picture comes from its own matrices, and what is nearest from depths that are
 * compared pixel by pixel.
 */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import type * as three from 'three';
import type { Camera } from '../../../src/optics/camera.ts';
import type { Solid } from '../../../src/model/solid.ts';

declare global {
  interface Window {
    three: typeof three;
  }
}

/** Which solid each pixel shows, row by row from the top left: its index, or −1 for none. */
export type Shown = readonly number[];

const ADDRESS = 'http://renderer.test/';
const PAGE = `<!doctype html><script type="module">
import * as three from './three.module.js';
window.three = three;
</script>`;

/** A page that holds the library and nothing else. */
export async function rendererPage(browser: Browser): Promise<Page> {
  const page = await browser.newPage();
  await page.route(`${ADDRESS}**`, (route) => {
    const file = new URL(route.request().url()).pathname.slice(1);
    if (!/^three\.[a-z]+\.js$/.test(file)) return route.fulfill({ contentType: 'text/html', body: PAGE });
    return route.fulfill({
      contentType: 'text/javascript',
      body: readFileSync(`node_modules/three/build/${file}`, 'utf8'),
    });
  });
  await page.goto(ADDRESS);
  await page.waitForFunction(() => 'three' in window);
  return page;
}

/** Draws solids from a rectilinear camera with square pixels, each in a colour of its own. At most 250 of them. */
export function drawn(page: Page, solids: readonly Solid[], camera: Camera): Promise<Shown> {
  const meshes = solids.map(({ positions, triangles }) => ({
    positions: Array.from(positions),
    triangles: Array.from(triangles),
  }));
  return page.evaluate(
    ({ meshes: given, view }) => {
      const library = window.three;
      const { width, height } = view.frame;
      const scene = new library.Scene();
      given.forEach(({ positions, triangles }, index) => {
        const geometry = new library.BufferGeometry();
        geometry.setAttribute('position', new library.Float32BufferAttribute(positions, 3));
        geometry.setIndex(triangles);
        const material = new library.ShaderMaterial({
          uniforms: { shade: { value: (index + 1) / 255 } },
          vertexShader:
            'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
          fragmentShader: 'uniform float shade; void main() { gl_FragColor = vec4(shade, 0.0, 0.0, 1.0); }',
        });
        const mesh = new library.Mesh(geometry, material);
        mesh.frustumCulled = false;
        scene.add(mesh);
      });
      const [pan, tilt, roll] = [view.pan, view.tilt, view.roll].map(library.MathUtils.degToRad);
      const halfHeight = (view.sensor.width / 2) * (height / width);
      const fov = 2 * library.MathUtils.radToDeg(Math.atan(halfHeight / view.focalLength));
      const lens = new library.PerspectiveCamera(fov, width / height, 0.05, 300);
      lens.up.set(0, 0, 1);
      lens.position.set(...view.eye);
      lens.lookAt(
        view.eye[0] + Math.cos(tilt ?? 0) * Math.sin(pan ?? 0),
        view.eye[1] + Math.cos(tilt ?? 0) * Math.cos(pan ?? 0),
        view.eye[2] - Math.sin(tilt ?? 0),
      );
      lens.rotateZ(-(roll ?? 0));
      const renderer = new library.WebGLRenderer({ antialias: false });
      const target = new library.WebGLRenderTarget(width, height);
      renderer.setRenderTarget(target);
      renderer.setClearColor(0x000000, 1);
      renderer.clear();
      renderer.render(scene, lens);
      const pixels = new Uint8Array(width * height * 4);
      renderer.readRenderTargetPixels(target, 0, 0, width, height, pixels);
      renderer.dispose();
      const shown: number[] = [];
      for (let row = height - 1; row >= 0; row -= 1)
        for (let column = 0; column < width; column += 1)
          shown.push((pixels[(row * width + column) * 4] ?? 0) - 1);
      return shown;
    },
    {
      meshes,
      view: { ...camera, eye: [camera.eye[0], camera.eye[1], camera.eye[2]] as [number, number, number] },
    },
  );
}
