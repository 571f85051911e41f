import {
  GLSL3,
  RawShaderMaterial,
  Vector2,
  Vector3,
  type IUniform,
  type ShaderMaterialParameters,
} from 'three';
import { rgbFromHex } from '../draw/colour.ts';

/** What every shader knows of the window; one object, shared by reference. */
export interface WindowUniforms {
  readonly uViewport: IUniform<Vector2>;
  /** Device pixels per CSS pixel. */
  readonly uRatio: IUniform<number>;
  /** How far lines are drawn before the faces that they lie on, against the Model's; less where much depth is looked through. */
  readonly uBias: IUniform<number>;
}

export const windowUniforms = (): WindowUniforms => ({
  uViewport: { value: new Vector2(1, 1) },
  uRatio: { value: 1 },
  uBias: { value: 1 },
});

/** A material whose colours reach the screen as they are: no tone mapping, no colour space conversion. */
export const shaderMaterial = (
  vertex: string,
  fragment: string,
  uniforms: Record<string, IUniform>,
  more: ShaderMaterialParameters = {},
): RawShaderMaterial =>
  new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: `precision highp float;\nprecision highp int;\n${vertex}`,
    fragmentShader: `precision highp float;\nprecision highp int;\n${fragment}`,
    uniforms,
    ...more,
  });

/** A #RRGGBB colour as the shader takes it, as encoded for the screen. */
export const inkVector = (hex: string): Vector3 => new Vector3(...rgbFromHex(hex));
