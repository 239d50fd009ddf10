/**
 * An invented series of any size in the project's own export layout: `writeSeries(folder, eyes)` writes the theatres'
 * list (one operated eye a row), the lane's and the keratometer's examinations (three visits an eye) and the audit.yaml
 * that reads them. The same number of eyes gives the same bytes.
 */
import { createWriteStream } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

const audit = `format: 1
title: Benchmark series
name: benchmark
period: { from: 2024-01-01, to: 2024-12-31 }
data_until: 2025-06-30
sources:
  - file: surgery.csv
    holds: surgery
    columns:
      patient: Code
      eye: Eye
      surgery_date: Operated
      age: Age
      sex: Sex
      site: Site
      surgeon: Surgeon
      technique: Method
      incision_axis: Incision
      lens_model: Lens
      lens_power: Power
      target_se: Aim
      predicted_se: Predicted
      axial_length: AL
      acd: { column: ACD, from: front }
      complication: Events
    reading: { date_order: year-first }
  - file: exam.csv
    holds: exam
    columns:
      patient: Code
      eye: Eye
      exam_date: Examined
      sphere: Sphere
      cylinder: { column: Cylinder, notation: signed }
      axis: Axis
      udva: { column: UDVA, numbers: logmar }
      cdva: { column: CDVA, numbers: logmar }
      k1: K1
      k1_axis: K1 axis
      k2: K2
      k2_axis: K2 axis
    constants: { lane_m: 6, vertex_mm: 12 }
    blank_means: { cylinder: 0 }
    reading: { date_order: year-first }
follow_up:
  visits:
    - { name: 1 month, days: [21, 45] }
    - { name: 3 months, days: [46, 135] }
  outcome: [3 months, 1 month]
cohorts: { by: technique, reference: manual, compare: [laser-assisted] }
subgroups: [lens_model, axial_length]
`;

/** Uniform numbers in [0, 1) from a seed (mulberry32). */
function uniform(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const day = (start, days) => new Date(start + days * 86400000).toISOString().slice(0, 10);
const quarter = (value) => (Math.round(value * 4) / 4).toFixed(2);
const signed = (text) => (text.startsWith('-') ? text : `+${text}`);
const axis = (degrees) => ((((Math.round(degrees) - 1) % 180) + 180) % 180) + 1;

/** A patient: what both eyes share. */
function patientOf(number, random, normal) {
  return {
    code: `P${String(number).padStart(7, '0')}`,
    age: Math.round(72 + 8 * normal()),
    sex: random() < 0.55 ? 'F' : 'M',
    al: 23.6 + 1.1 * normal(),
    k: 43.6 + 1.4 * normal(),
  };
}

/** One eye: its row of the theatres' list, and its three examinations. */
function eyeRows({ code, age, sex, al, k: own }, side, random, normal) {
  const start = Date.UTC(2024, 0, 1) + Math.floor(random() * 366) * 86400000;
  const laser = random() < 0.4;
  const axialLength = al + 0.15 * normal();
  const k = own + 0.2 * normal();
  const steep = axis(90 + 35 * normal());
  const astigmatism = Math.abs(0.9 + 0.5 * normal());
  const predicted = -0.2 + 0.15 * normal();
  const achieved = predicted + (laser ? 0.36 : 0.42) * normal();
  const left = Math.abs(0.35 * normal());
  const operated = [
    code,
    side,
    day(start, 0),
    age,
    sex,
    random() < 0.5 ? 'North' : 'South',
    `S${1 + Math.floor(random() * 12)}`,
    laser ? 'laser-assisted' : 'manual',
    110,
    `L${1 + Math.floor(random() * 4)}`,
    (Math.round(2 * (21.5 - 2.4 * (axialLength - 23.6))) / 2).toFixed(1),
    '-0.25',
    predicted.toFixed(2),
    axialLength.toFixed(2),
    (3.1 + 0.35 * normal()).toFixed(2),
    random() < 0.012 ? 'posterior_capsule_rupture' : 'none',
  ];
  const exam = (days, se, cylinder, at, acuity, shift) => {
    const minus = quarter(-cylinder);
    const flat = k - astigmatism / 2 + shift;
    const flatAxis = axis(steep + 90 + 3 * normal());
    return [
      code,
      side,
      day(start, days),
      signed(quarter(se + cylinder / 2)),
      minus === '-0.00' ? '' : minus,
      minus === '-0.00' ? '' : at,
      (acuity + 0.15).toFixed(2),
      acuity.toFixed(2),
      flat.toFixed(2),
      flatAxis,
      (flat + astigmatism).toFixed(2),
      axis(flatAxis + 90),
    ];
  };
  const before = exam(-5 - Math.floor(random() * 50), -1 + 2 * normal(), astigmatism, axis(steep + 90), 0.4, 0);
  const after = [25 + Math.floor(random() * 18), 60 + Math.floor(random() * 60)].map((days) =>
    exam(days, achieved + 0.1 * normal(), left, axis(180 * random()), 0.02 + 0.05 * Math.abs(normal()), 0.1 * normal()),
  );
  return { operated, exams: [before, ...after] };
}

/** A stream of rows; nothing is held but what the disk has not taken yet. */
function sheet(path, header) {
  const out = createWriteStream(path, { highWaterMark: 1 << 20 });
  out.write(`${header}\n`);
  return {
    row: (cells) => (out.write(`${cells.join(',')}\n`) ? undefined : new Promise((ready) => out.once('drain', ready))),
    end: () => new Promise((done) => out.end(done)),
  };
}

/** Writes the exports and audit.yaml of a series: two eyes in two of three patients. */
export async function writeSeries(folder, eyes, seed = 20240101) {
  await mkdir(folder, { recursive: true });
  const random = uniform(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const surgery = sheet(
    join(folder, 'surgery.csv'),
    'Code,Eye,Operated,Age,Sex,Site,Surgeon,Method,Incision,Lens,Power,Aim,Predicted,AL,ACD,Events',
  );
  const exam = sheet(
    join(folder, 'exam.csv'),
    'Code,Eye,Examined,Sphere,Cylinder,Axis,UDVA,CDVA,K1,K1 axis,K2,K2 axis',
  );
  for (let written = 0, patient = 0; written < eyes; patient++) {
    const person = patientOf(patient, random, normal);
    const sides = patient % 3 === 2 ? ['R'] : ['R', 'L'];
    for (const side of sides.slice(0, eyes - written)) {
      const { operated, exams } = eyeRows(person, side, random, normal);
      await surgery.row(operated);
      for (const cells of exams) await exam.row(cells);
      written++;
    }
  }
  await Promise.all([surgery.end(), exam.end()]);
  await writeFile(join(folder, 'audit.yaml'), audit);
}
