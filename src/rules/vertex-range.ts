import { rangeRule } from './range.js';

/** A vertex distance that no trial frame has, or one in metres, is set aside; the refraction stands without it. */
export const vertexRange = rangeRule('vertex-range', {
  vertex_mm: { table: 'refractions', effect: 'value left out', spoils: 'value', value: 'vertex' },
});
