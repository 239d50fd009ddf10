/** Units as exports write them below a header, in lower case, without brackets. */
const units = new Set(
  (
    'd dpt dptr dioptre dioptres diopter diopters mm cm m µm μm um deg degree degrees ° º logmar decimal snellen letters ' +
    'mmhg cells/mm² cells/mm2 /mm² /mm2 s sec min y yr yrs years days % text code yyyy-mm-dd dd.mm.yyyy dd/mm/yyyy ' +
    'mm/dd/yyyy tt.mm.jjjj jj/mm/aaaa'
  ).split(' '),
);

/**
 * Whether the row below a header states units: every cell that is not blank is one, and at least one is.
 *
 * @param cells  the first row below the header
 * @example isUnitsRow(['', '(D)', '[mm]']) // true
 */
export function isUnitsRow(cells: readonly string[]): boolean {
  const given = cells
    .map((cell) =>
      cell
        .replace(/[()[\]]/g, '')
        .trim()
        .toLowerCase(),
    )
    .filter((cell) => cell !== '');
  return given.length > 0 && given.every((cell) => units.has(cell));
}
