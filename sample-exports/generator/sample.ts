import { type Expected, expectedValues } from './expected.js';
import { biometryFile } from './exports/biometry.js';
import { endotheliumFile } from './exports/endothelium.js';
import { keratometerFile } from './exports/keratometer.js';
import { laneNorth, laneSouth } from './exports/lanes.js';
import { theatreList } from './exports/theatre-list.js';
import { wideFile } from './exports/wide.js';
import { type Eye, makeEyes } from './eyes.js';
import { plant, unexaminedRows } from './plant.js';
import { fillReadme } from './readme.js';
import { makeSeries } from './series.js';
import { bytes, type Sheet } from './sheet.js';
import type { Slip } from './slip.js';
import { SLIPS } from './slips.js';
import { SEED } from './truth.js';

/** Codes and sides as the theatre list writes them. */
function standsOn(rows: readonly (readonly string[])[], eye: Eye): boolean {
  const side = eye.operation.laterality === 'right' ? 'R' : 'L';
  return rows.some(([code, written]) => code === eye.patient.code && written === side);
}

/** The exports of the main series with slips, all of them unless some are chosen, and the wide one without. */
export function sheets(slips: readonly Slip[] = SLIPS): Sheet[] {
  const eyes = makeEyes(SEED);
  const theatre = theatreList(eyes);
  const unexamined = unexaminedRows(theatre, slips);
  const examined = eyes.filter((eye) => !standsOn(unexamined, eye));
  const devices = [keratometerFile, biometryFile, endotheliumFile].map((file) => file(examined));
  const files = [theatre, laneNorth(examined), laneSouth(examined), ...devices];
  return [...files.map((sheet) => plant(sheet, slips)), wideFile(makeSeries(SEED))];
}

function plantedFile(expected: readonly Expected[]): Uint8Array {
  return Buffer.from(`${JSON.stringify({ seed: SEED, effects: expected }, undefined, 2)}\n`);
}

/**
 * Every file that the generator writes, by name.
 *
 * @param readme the README as it stands; the parts between its marks are written anew
 */
export function sampleFiles(readme: string): Map<string, Uint8Array> {
  const made = sheets();
  const expected = expectedValues();
  const files = new Map(made.map((sheet) => [sheet.file, bytes(sheet)]));
  files.set('planted.json', plantedFile(expected));
  files.set('README.md', Buffer.from(fillReadme(readme, made, expected, SLIPS)));
  return files;
}
