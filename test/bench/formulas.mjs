/**
 * How long predictions and lens constants take: node test/bench/formulas.mjs [eyes] [compiled pipeline]
 *
 * Invents biometry of so many eyes, two a patient, of five lenses; predicts every eye by every formula; finds for every
 * lens and formula the constant of zero mean error with its interval, and the errors without the eye's own patient.
 * Needs `npm run build`. The constant that was put in must come out, or the run fails: a fast wrong answer is none.
 */
import { pathToFileURL } from 'node:url';

const [count = '100000', compiled = new URL('../../dist', import.meta.url).pathname] = process.argv.slice(2);
const load = (path) => import(pathToFileURL(`${compiled}/${path}`).href);
const { formulaNames } = await load('src/optics/formulas/formula.js');
const { formulaNamed, predictedRefraction } = await load('src/optics/formulas/index.js');
const { lensConstant } = await load('src/predictions/constant-interval.js');
const { indexPatients } = await load('src/statistics/patients.js');

/** Park and Miller's generator, and normal numbers from it. */
let state = 20251125;
const lot = () => {
  state = (state * 48271) % 2147483647;
  return state / 2147483647;
};
const normal = () => Math.sqrt(-2 * Math.log(1 - lot())) * Math.cos(2 * Math.PI * lot());

const constants = { 'SRK/T': 118.7, 'Holladay 1': 1.6, 'Hoffer Q': 5.4, Haigis: 1.1 };
const lenses = 5;
const eyes = Array.from({ length: Number(count) }, () => {
  const axialLength = 23.6 + 1.1 * normal();
  const k = 43.6 + 1.4 * normal();
  const power = Math.round(2 * (20.5 - 2.7 * (axialLength - 23.6) - 1.1 * (k - 43.6))) / 2;
  const biometry = { axialLength, k1: k - 0.4, k2: k + 0.4, chamberDepth: 3.1 + 0.3 * normal() };
  return { biometry, power: Math.min(34, Math.max(5, power)), error: 0.45 * normal() };
});

const seconds = (since) => `${((performance.now() - since) / 1000).toFixed(2)} s`;
const begin = performance.now();
for (const name of formulaNames) {
  const start = performance.now();
  const formula = formulaNamed(name);
  const achieved = Float64Array.from(eyes, ({ biometry, power, error }) => {
    return predictedRefraction(formula, biometry, constants[name], power) + error;
  });
  const predicted = seconds(start);
  const search = performance.now();
  const found = Array.from({ length: lenses }, (_, lens) => {
    const own = [...eyes.keys()].filter((eye) => Math.floor(eye / 2) % lenses === lens && !Number.isNaN(achieved[eye]));
    const of = {
      formula,
      eyes: own.map((eye) => formula.eye(eyes[eye].biometry)),
      power: Float64Array.from(own, (eye) => eyes[eye].power),
      achieved: Float64Array.from(own, (eye) => achieved[eye]),
    };
    const patients = indexPatients(Int32Array.from(own, (eye) => Math.floor(eye / 2)));
    return lensConstant(of, patients, 0.95).estimate;
  });
  const worst = Math.max(...found.map(({ value, low, high }) => Math.abs(value - constants[name]) / (high - low)));
  if (!(worst < 1)) throw new Error(`${name}: a constant lies ${worst} widths of its interval from the one put in`);
  console.log(`${name.padEnd(10)}  ${eyes.length} predictions ${predicted}, ${lenses} constants ${seconds(search)}`);
}
console.log(`together    ${seconds(begin)}`);
