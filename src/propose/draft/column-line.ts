import { propose as words } from '../../words/en/propose.js';
import type { ExportedFile } from '../exported.js';
import { likeEnough } from '../looks.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { type Doubt, doubt } from './doubt.js';
import { type FieldForm, type FileSettings, formOf } from './field-forms.js';
import { headerName } from './header-name.js';
import { type YamlLine, yamlBraces } from './lines.js';
import { type Keys, placeKeys } from './place-keys.js';
import { samplesOf } from './samples.js';

/** What the recognition itself leaves in doubt. */
function ownDoubts(of: RecognisedFile, one: Placed): readonly Doubt[] {
  const found: Doubt[] = [];
  if (one.against) found.push(doubt('header against cells', words.doubts.against(one.against, one.term)));
  else if (one.by === 'cells') found.push(doubt('by cells', words.doubts.byCells));
  if (one.by === 'part of header' && one.term !== 'predicted_se')
    found.push(doubt('part of header', words.doubts.partOfHeader(one.term)));
  if (one.likeness < likeEnough.surely) {
    const cells = Math.round((1 - one.likeness) * (of.profiles[one.index]?.filled ?? 0));
    found.push(doubt('some cells unlike', words.doubts.someUnlike(cells, of.profiles[one.index]?.filled ?? 0)));
  }
  return found;
}

/** How a column is written down, with everything that is in doubt about it. */
export function columnDraft(of: RecognisedFile, one: Placed, settings: FileSettings): FieldForm {
  const form = formOf(of, one, settings);
  const header = headerName(of.file, one.index);
  return { ...form, doubts: [...ownDoubts(of, one), ...form.doubts].map((each) => ({ ...each, header })) };
}

function written(file: ExportedFile, index: number, keys: Keys): string {
  const place = placeKeys(file, index);
  const [only] = place;
  return keys.length === 0 && place.length === 1 && only?.[0] === 'column' ? only[1] : yamlBraces([...place, ...keys]);
}

/** The lines of a column; where its form is open they stand as comments. @param off  with a partner whose form is open */
export function columnLines(
  of: RecognisedFile,
  one: Placed,
  { keys, doubts, ways }: FieldForm,
  depth: number,
  off = false,
): readonly YamlLine[] {
  const comment = words.behind(samplesOf(of, one), words.basis[one.by]);
  const line = (form: Keys): YamlLine => ({
    depth,
    text: `${one.term}: ${written(of.file, one.index, form)}`,
    off: off || ways.length > 0,
  });
  if (ways.length === 0) return [{ ...line(keys), comment, doubts }];
  return ways.map((form, at) => (at === 0 ? { ...line(form), comment, doubts } : line(form)));
}
