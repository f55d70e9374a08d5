/**
 * How bodies are inked: a flat fill in the tint of the paper, a little darker where it turns away, and an outline
 * of the same width everywhere, as a pen gives it.
 *
 * The outline is the body once more, back faces only, swollen by half a pen's width in the plane of the paper.
 */
import { BackSide, Color, DoubleSide, ShaderMaterial } from 'three';

export interface Colours {
  readonly paper: string;
  readonly ink: string;
  readonly tint: string;
  readonly hair: string;
  readonly accent: string;
}

export interface Ink {
  readonly fill: ShaderMaterial;
  readonly pen: ShaderMaterial;
}

/** How strongly a body is drawn. */
export type Weight = 'plain' | 'chosen' | 'lit' | 'faded';

const FILL_VERTEX = /* glsl */ `
  varying vec3 n;
  void main() {
    n = normalMatrix * normal;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }`;

const FILL_FRAGMENT = /* glsl */ `
  uniform vec3 face;
  uniform vec3 away;
  varying vec3 n;
  void main() {
    float turned = abs(normalize(n).z);
    float shade = smoothstep(0.0, 0.9, 0.75 * turned + 0.25 * max(0.0, normalize(n).y));
    gl_FragColor = vec4(mix(away, face, shade), 1.0);
  }`;

const PEN_VERTEX = /* glsl */ `
  uniform float width;
  void main() {
    vec4 at = modelViewMatrix * vec4(position, 1.0);
    vec3 n = normalMatrix * normal;
    vec2 flat2 = length(n.xy) > 1e-6 ? normalize(n.xy) : vec2(0.0);
    at.xy += flat2 * width;
    gl_Position = projectionMatrix * at;
  }`;

const PEN_FRAGMENT = /* glsl */ `
  uniform vec3 colour;
  void main() { gl_FragColor = vec4(colour, 1.0); }`;

const display = (css: string): Color => new Color().setStyle(css, '');

export function createInk(): Ink {
  return {
    fill: new ShaderMaterial({
      vertexShader: FILL_VERTEX,
      fragmentShader: FILL_FRAGMENT,
      uniforms: { face: { value: new Color() }, away: { value: new Color() } },
      side: DoubleSide,
      polygonOffset: true,
      polygonOffsetFactor: 1,
      polygonOffsetUnits: 1,
    }),
    pen: new ShaderMaterial({
      vertexShader: PEN_VERTEX,
      fragmentShader: PEN_FRAGMENT,
      uniforms: { colour: { value: new Color() }, width: { value: 0.001 } },
      side: BackSide,
    }),
  };
}

/** Sets the colours of a weight; a `large` body, such as a tyre, takes the accent thinly.
 * Everything is opaque: what fades goes towards the paper. */
export function inkAs(ink: Ink, weight: Weight, colours: Colours, large = false): void {
  const paper = display(colours.paper);
  const face = weight === 'chosen' || weight === 'lit' ? display(colours.accent) : display(colours.tint);
  // a large body in the full accent would drown what stands on it
  if (large && weight !== 'plain') face.lerp(paper, 0.62);
  const away = face.clone().lerp(display(colours.ink), weight === 'chosen' ? 0.25 : 0.14);
  const line = display(colours.ink);
  if (weight === 'faded') {
    face.lerp(paper, 0.75);
    away.lerp(paper, 0.75);
    line.lerp(paper, 0.72);
  }
  ink.fill.uniforms.face!.value = face;
  ink.fill.uniforms.away!.value = away;
  ink.pen.uniforms.colour!.value = line;
}

export const lineColour = (weight: Weight, colours: Colours): Color =>
  weight === 'faded' ? display(colours.ink).lerp(display(colours.paper), 0.72) : display(colours.ink);

export { display };
