import { biometryFile } from '../../sample-exports/generator/exports/biometry.js';
import { endotheliumFile } from '../../sample-exports/generator/exports/endothelium.js';
import { keratometerFile } from '../../sample-exports/generator/exports/keratometer.js';
import { laneNorth, laneSouth } from '../../sample-exports/generator/exports/lanes.js';
import { theatreList } from '../../sample-exports/generator/exports/theatre-list.js';
import type { Eye } from '../../sample-exports/generator/eyes.js';
import { bytes, type Sheet } from '../../sample-exports/generator/sheet.js';
import { committed } from '../sample-exports/committed.js';
import { type Audit, auditOf, type Files } from './audit.js';

/** The exports of the main series. */
export const mainFiles = [
  'theatre-list.csv',
  'lane-north.csv',
  'lane-south.csv',
  'keratometer.csv',
  'biometry.csv',
  'endothelium.csv',
] as const;

/** Text of an audit.yaml of the sample. */
export function auditText(name: 'audit.yaml' | 'wide-audit.yaml' = 'audit.yaml'): string {
  return committed(name).toString('utf8');
}

/** The committed exports, slips and all. */
export function committedFiles(): Record<string, Uint8Array> {
  return Object.fromEntries(mainFiles.map((file) => [file, committed(file)]));
}

/** The same exports before any slip is planted. */
export function faultlessSheets(eyes: readonly Eye[]): readonly Sheet[] {
  return [
    theatreList(eyes),
    laneNorth(eyes),
    laneSouth(eyes),
    keratometerFile(eyes),
    biometryFile(eyes),
    endotheliumFile(eyes),
  ];
}

export function filesOf(sheets: readonly Sheet[]): Files {
  return Object.fromEntries(sheets.map((sheet) => [sheet.file, bytes(sheet)]));
}

export function auditOfWide(): Promise<Audit> {
  return auditOf(auditText('wide-audit.yaml'), { 'wide.csv': committed('wide.csv') });
}
