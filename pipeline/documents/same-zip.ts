/** Zip archives count from this day, in the machine's own time: without a zone it is the same fields everywhere. */
const firstDay = '1980-01-01T00:00:00';

/**
 * A Word document without the moment at which it was made: entries in one order with one date, the dates of its
 * properties replaced.
 */
export async function sameZip(bytes: Uint8Array): Promise<Uint8Array> {
  const { strFromU8, strToU8, unzipSync, zipSync } = await import('fflate');
  const entries = Object.entries(unzipSync(bytes)).sort(([a], [b]) => (a < b ? -1 : 1));
  const dated = entries.map(([name, data]) => {
    const undated = name === 'docProps/core.xml' ? strToU8(withoutMoment(strFromU8(data))) : data;
    return [name, [undated, { mtime: firstDay }]] as const;
  });
  return zipSync(Object.fromEntries(dated) as Parameters<typeof zipSync>[0], { level: 6 });
}

function withoutMoment(properties: string): string {
  return properties.replace(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, `${firstDay}Z`);
}
