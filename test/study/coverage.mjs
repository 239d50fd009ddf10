// Coverage of the intervals and type I error of the tests, by simulation: 60 % of patients have both eyes.
//   npm run build && node test/study/coverage.mjs 10000
// writes test/study/coverage.md. It is no part of the test run; the functions are the project's own.
import { writeFileSync } from 'node:fs';
import { meanAbsolute, medianAbsolute } from '../../dist/src/statistics/absolute-error.js';
import { centroid } from '../../dist/src/statistics/centroid.js';
import { centroidDifference } from '../../dist/src/statistics/cohorts/centroid-difference.js';
import { recogniseDesign } from '../../dist/src/statistics/cohorts/design.js';
import { meanDifference } from '../../dist/src/statistics/cohorts/mean-difference.js';
import { relativeEffect } from '../../dist/src/statistics/cohorts/relative-effect.js';
import { riskDifference } from '../../dist/src/statistics/cohorts/risk.js';
import { spreadRatio } from '../../dist/src/statistics/cohorts/spread-ratio.js';
import { normalQuantile } from '../../dist/src/statistics/distributions.js';
import { meanInterval } from '../../dist/src/statistics/mean.js';
import { indexPatients } from '../../dist/src/statistics/patients.js';
import { shareInterval } from '../../dist/src/statistics/share.js';
import { rootMeanSquare, standardDeviation } from '../../dist/src/statistics/spread.js';
import { errorShapes, normal, uniform } from './random.mjs';

const runs = Number(process.argv[2] ?? 1000);
const level = 0.95;
const bilateral = 0.6;
const sizes = [20, 50, 200];
const correlations = [0, 0.5];

const percent = (share) => (100 * share).toFixed(1);

/** Patients with one eye or two; the first 60 % have both. */
function eyesOf(patients) {
  const both = Math.round(bilateral * patients);
  const codes = [];
  for (let patient = 0; patient < patients; patient++) codes.push(...(patient < both ? [patient, patient] : [patient]));
  return Int32Array.from(codes);
}

/** Values of eyes with correlation `icc` between fellow eyes; both parts have the same shape. */
function correlated(codes, icc, draw) {
  let last = -1;
  let shared = 0;
  return Float64Array.from(codes, (patient) => {
    if (patient !== last) {
      last = patient;
      shared = Math.sqrt(icc) * draw();
    }
    return shared + Math.sqrt(1 - icc) * draw();
  });
}

/** Spread, mean and median size of one eye's error, from two million draws. */
function truthOf(icc, draw) {
  const values = Float64Array.from({ length: 2_000_000 }, () => Math.sqrt(icc) * draw() + Math.sqrt(1 - icc) * draw());
  const sizesOfErrors = values.map(Math.abs).sort();
  const square = values.reduce((sum, value) => sum + value * value, 0) / values.length;
  return {
    spread: Math.sqrt(square),
    meanAbsolute: sizesOfErrors.reduce((sum, value) => sum + value, 0) / values.length,
    medianAbsolute: sizesOfErrors[values.length / 2],
  };
}

const covers = ({ low, high }, truth) => low !== undefined && low <= truth && truth <= high;

function continuousCell(shape, patients, icc, seed) {
  const next = uniform(seed);
  const z = normal(next);
  const draw = () => errorShapes[shape](next, z);
  const truth = truthOf(icc, draw);
  const codes = eyesOf(patients);
  const index = indexPatients(codes);
  const hits = { mean: 0, sd: 0, rms: 0, mae: 0, medae: 0, centroid: 0 };
  for (let run = 0; run < runs; run++) {
    const x = correlated(codes, icc, draw);
    const y = correlated(codes, icc, draw);
    hits.mean += covers(meanInterval(x, index, level), 0);
    hits.sd += covers(standardDeviation(x, index, level), truth.spread);
    hits.rms += covers(rootMeanSquare(x, index, level), truth.spread);
    hits.mae += covers(meanAbsolute(x, index, level), truth.meanAbsolute);
    hits.medae += covers(medianAbsolute(x, index, level), truth.medianAbsolute);
    hits.centroid += centroid(x, y, index, level).test.p >= 1 - level;
  }
  return Object.values(hits).map((count) => percent(count / runs));
}

const shares = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.97];
const rareShares = [0.01, 0.02, 0.05];

/** 0/1 of a normal below its quantile: fellow eyes correlate as the normals do. */
function shareCell(method, trueShares, patients, icc, seed) {
  const next = uniform(seed);
  const z = normal(next);
  const codes = eyesOf(patients);
  const index = indexPatients(codes);
  return trueShares.map((share) => {
    const limit = normalQuantile(share);
    let hits = 0;
    for (let run = 0; run < runs; run++) {
      const reached = Uint8Array.from(correlated(codes, icc, z), (value) => (value <= limit ? 1 : 0));
      hits += covers(shareInterval(reached, index, level, { method }), share);
    }
    return hits / runs;
  });
}

/** Which eyes are in A and B: apart, a quarter of patients in both, one eye of each in either. */
function cohortsOf(design, patients) {
  const a = [];
  const b = [];
  for (let patient = 0; patient < patients; patient++) {
    const inBoth = design === 'fellow-eye' || (design === 'mixed' && patient % 4 === 0);
    if (inBoth) {
      a.push(patient);
      b.push(patient);
    } else {
      const side = patient % 2 === 0 ? a : b;
      side.push(patient);
      if (patient % 5 < 3) side.push(patient);
    }
  }
  return { a: Int32Array.from(a), b: Int32Array.from(b) };
}

function comparisonCell(design, patients, icc, seed) {
  const next = uniform(seed);
  const z = normal(next);
  const { a, b } = cohortsOf(design, patients);
  const cohorts = recogniseDesign(a, b);
  const rejected = { mean: 0, spread: 0, effect: 0, share: 0, centroid: 0 };
  let covered = 0;
  const limit = normalQuantile(0.8);
  const drawn = () => {
    const shared = Float64Array.from({ length: patients }, () => Math.sqrt(icc) * z());
    const of = (codes) => Float64Array.from(codes, (patient) => shared[patient] + Math.sqrt(1 - icc) * z());
    return [of(a), of(b)];
  };
  const isBelow = (p) => (p !== undefined && p < 1 - level ? 1 : 0);
  for (let run = 0; run < runs; run++) {
    const [xa, xb] = drawn();
    const [ya, yb] = drawn();
    const reach = (values) => Uint8Array.from(values, (value) => (value <= limit ? 1 : 0));
    const risk = riskDifference(reach(xa), reach(xb), cohorts, level, {});
    rejected.mean += isBelow(meanDifference(xa, xb, cohorts, level).p);
    rejected.spread += isBelow(spreadRatio(xa, xb, cohorts, level).p);
    rejected.effect += isBelow(relativeEffect(xa.map(Math.abs), xb.map(Math.abs), cohorts, level).p);
    rejected.share += isBelow(risk.p);
    rejected.centroid += isBelow(centroidDifference({ x: xa, y: ya }, { x: xb, y: yb }, cohorts, level).test?.p);
    covered += covers(risk, 0);
  }
  return [...Object.values(rejected), covered].map((count) => percent(count / runs));
}

const table = (head, rows) =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

let seed = 20251;
const continuous = Object.keys(errorShapes).flatMap((shape) =>
  sizes.flatMap((patients) =>
    correlations.map((icc) => [shape, patients, icc, ...continuousCell(shape, patients, icc, seed++)]),
  ),
);
const shareRows = (method, trueShares) =>
  sizes.flatMap((patients) =>
    correlations.map((icc) => {
      const found = shareCell(method, trueShares, patients, icc, seed++);
      const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
      return [patients, icc, ...found.map(percent), percent(mean)];
    }),
  );
const wilsonRows = shareRows('wilson', shares);
const exactRows = shareRows('exact', rareShares);
const comparisons = ['independent', 'mixed', 'fellow-eye'].flatMap((design) =>
  [20, 50].flatMap((patients) =>
    correlations.map((icc) => [design, patients, icc, ...comparisonCell(design, patients, icc, seed++)]),
  ),
);

writeFileSync(
  new URL('coverage.md', import.meta.url),
  `# Coverage and type I error by simulation

${runs} runs a cell, 60 % of patients with both eyes, nominal 95 % and 5 %; percent. Made by \`coverage.mjs\`, seeded.
The standard error of a cell is ${percent(Math.sqrt((0.95 * 0.05) / runs))} points.

## Intervals of one group

Errors of fellow eyes correlate by ICC; both their parts have the shape named.

${table(['errors', 'patients', 'ICC', 'mean', 'SD', 'RMS', 'MAE', 'MedAE', 'centroid'], continuous)}

## Shares, Wilson at the effective number of eyes

${table(['patients', 'ICC', ...shares.map((share) => `true ${share}`), 'mean'], wilsonRows)}

## Rare events, exact at the effective number of eyes

${table(['patients', 'ICC', ...rareShares.map((share) => `true ${share}`), 'mean'], exactRows)}

## Two cohorts: type I error, and coverage of the difference of shares (true share 0.80 in both)

${table(['design', 'patients', 'ICC', 'mean', 'SD ratio', 'relative effect', 'share', 'centroid', 'coverage of share difference'], comparisons)}
`,
);
