/** A limit with its unit: '0.50 D', '5°'. */
export function quantity(limit: string, unit: string): string {
  return unit === 'deg' ? `${Number(limit)}°` : `${limit} ${unit}`;
}

/** A unit behind a name; results rows shorten degrees. */
export function unitName(unit: string): string {
  return unit === 'deg' ? 'degrees' : unit;
}
