import type { Operation, Patient } from './people.js';
import { matrix, type PowerMatrix, plus, turned } from './power-matrix.js';
import type { Random } from './random.js';
import { CORNEA, INCISION } from './truth.js';

/** One eye as it is, before anybody measures it. */
export interface Anatomy {
  readonly axialLength: number;
  readonly chamberDepth: number;
  readonly cornea: PowerMatrix;
  readonly corneaAfter: PowerMatrix;
  /** Where the incision stands, degrees 0 up to 360, facing the patient. */
  readonly incision: number;
}

/** What two eyes of a patient share. */
export interface Family {
  readonly axialLength: number;
  readonly power: number;
  readonly horizontal: number;
  /** Excess of the meridian that runs up and towards the nose; it stands mirrored in the left eye. */
  readonly nasal: number;
}

const LONG_EYES = 0.09;

export function family(random: Random): Family {
  const ordinary = 23.5 + 0.9 * random.normal();
  const long = 25.5 - 1.9 * Math.log(random.uniform());
  const axialLength = Math.min(30.7, Math.max(20.2, random.chance(LONG_EYES) ? long : ordinary));
  return {
    axialLength,
    power: 43.6 - 0.3 * (Math.min(axialLength, 27) - 23.5) + 1.1 * random.normal(),
    horizontal: 0.5 * random.normal(),
    nasal: 0.3 * random.normal(),
  };
}

/** Usual place of a surgeon's incision: S1 temporal, S2 superior, S3 between the two. */
function incisionOf(random: Random, patient: Patient, operation: Operation): number {
  const right = operation.laterality === 'right';
  const usual = { S1: right ? 180 : 0, S2: 95, S3: right ? 140 : 40 }[patient.surgeon];
  return (Math.round(usual + 5 * random.normal()) + 360) % 360;
}

/** The cornea's change: flatter along the incision by the planted amount, give or take. */
function incisionEffect(random: Random, incision: number): PowerMatrix {
  const inItsFrame = matrix(0, INCISION.along + 0.14 * random.normal(), INCISION.torque + 0.14 * random.normal());
  return turned(inItsFrame, incision);
}

export function anatomy(random: Random, patient: Patient, operation: Operation, shared: Family): Anatomy {
  const side = operation.laterality === 'right' ? 1 : -1;
  const cornea = matrix(
    shared.power + 0.2 * random.normal(),
    CORNEA.horizontal + shared.horizontal + 0.25 * random.normal(),
    CORNEA.oblique + side * shared.nasal + 0.22 * random.normal(),
  );
  const incision = incisionOf(random, patient, operation);
  const axialLength = shared.axialLength + 0.12 * random.normal();
  return {
    axialLength,
    chamberDepth: 3.15 + 0.12 * (Math.min(axialLength, 28) - 23.5) + 0.25 * random.normal(),
    cornea,
    corneaAfter: plus(cornea, incisionEffect(random, incision)),
    incision,
  };
}
