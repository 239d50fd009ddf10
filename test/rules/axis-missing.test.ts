import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/columns/table.js';
import { after, lane } from './clinic.js';

const refraction = { sphere: 'S', cylinder: 'C', axis: 'A' };

describe('axis-missing', () => {
  it('asks for the axis of a cylinder, and leaves out the vector alone', async () => {
    const rows = [`A1,R,${after},1,-0.75,`, `A2,R,${after},1,-0.75,n/a`, `A3,R,${after},1,-0.75,90`];
    const { told, tables } = await lane('S,C,A', rows, refraction);
    expect(told).toMatchObject([
      {
        rule: 'axis-missing',
        severity: 'query',
        source: 1,
        row: 2,
        column: 'A',
        field: 'axis',
        written: undefined,
        eye: 0,
        day: 40,
        effect: 'vector left out',
        detail: 0.75,
      },
      { rule: 'axis-missing', row: 3, written: 'n/a' },
    ]);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([1, 1, 0]);
  });

  // Settled: below 0.01 D a blank axis is a zero vector.
  it.each([
    ['0', 0],
    ['0.005', 0],
    ['0.01', 1],
    ['-0.01', 1],
  ])('takes a cylinder of %s for %i', async (cylinder, asked) => {
    const { told } = await lane('S,C,A', [`A1,R,${after},1,${cylinder},`], refraction);
    expect(told.filter(({ rule }) => rule === 'axis-missing')).toHaveLength(asked);
  });

  it('leaves an axis that is there, and no axis, to the rules that name it', async () => {
    const { told } = await lane('S,C,A', [`A1,R,${after},1,-1,195`, `A2,R,${after},1,-1,9O`], refraction);
    expect(told.map(({ rule }) => rule).sort()).toEqual(['axis-range', 'number-unreadable']);
  });

  it('does not ask where a second row of the same day gives the axis, or what was meant for one', async () => {
    const rows = [`A1,R,${after},1,-1,`, `A1,R,${after},1,-1,90`, `A2,R,${after},1,-1,`, `A2,R,${after},1,-1,195`];
    const { told } = await lane('S,C,A', rows, refraction);
    expect(told.map(({ rule }) => rule).filter((rule) => rule !== 'same-key-equal')).toEqual(['axis-range']);
  });

  it('asks where a refraction in one cell has none', async () => {
    const rows = [`A1,R,${after},-1.25 -0.50`, `A2,R,${after},-1.25 -0.50 x 90`, `A3,R,${after},-1.25 DS`];
    const { told } = await lane('R', rows, { refraction: 'R' });
    expect(told).toMatchObject([{ rule: 'axis-missing', row: 2, column: 'R', written: '-1.25 -0.50' }]);
  });

  it('tells a file without a column for it once, not at its every row', async () => {
    const rows = [`A1,R,${after},1,-1`, `A2,R,${after},1,-1`, `A3,R,${after},1,0`];
    const { told } = await lane('S,C', rows, { sphere: 'S', cylinder: 'C' });
    expect(told).toMatchObject([{ rule: 'axis-not-mapped', severity: 'query', source: 1, row: 0, detail: 2 }]);
  });

  it('does not ask about a refraction that is set aside', async () => {
    const { told } = await lane('S,C,A', [`A1,R,${after},75,-1,`, `A2,R,${after},1,0,`], refraction);
    expect(told.map(({ rule }) => rule)).toEqual(['sphere-range']);
  });
});
