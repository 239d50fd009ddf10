import { describe, expect, it } from 'vitest';
import { locateColumn } from '../../src/findings/header.js';

const place = (column: string | undefined, more: { position?: number; occurrence?: number } = {}) => ({
  column,
  position: more.position,
  occurrence: more.occurrence,
});

describe('a column named in audit.yaml', () => {
  const header = ['ID', ' Axis', 'axis ', 'Sphäre', 'V  c.c.'];

  it('is found whatever the blanks and capitals, and however an accent is composed', () => {
    expect(locateColumn(header, place('id'))).toEqual({ index: 0 });
    expect(locateColumn(header, place('SPHA\u0308RE'))).toEqual({ index: 3 });
    expect(locateColumn(header, place('v c.c.'))).toEqual({ index: 4 });
  });

  it('met twice needs its occurrence', () => {
    expect(locateColumn(header, place('Axis'))).toEqual({ index: undefined, why: 'twice' });
    expect(locateColumn(header, place('Axis', { occurrence: 1 }))).toEqual({ index: 1 });
    expect(locateColumn(header, place('Axis', { occurrence: 2 }))).toEqual({ index: 2 });
    expect(locateColumn(header, place('Axis', { occurrence: 3 }))).toEqual({ index: undefined, why: 'missing' });
  });

  it('may be named by its position, from 1', () => {
    expect(locateColumn(header, place(undefined, { position: 5 }))).toEqual({ index: 4 });
    expect(locateColumn(header, place(undefined, { position: 6 }))).toEqual({ index: undefined, why: 'missing' });
  });

  it('is missing where no header is it', () => {
    expect(locateColumn(header, place('Sphere'))).toEqual({ index: undefined, why: 'missing' });
  });
});
