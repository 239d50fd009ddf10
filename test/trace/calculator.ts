/** Reads a working as a pocket calculator would, angles in degrees. */
export function calculated(working: string): number {
  const plain = working
    .replace(/^\|(.*)\|$/, 'abs($1)')
    .replaceAll('−', '-')
    .replaceAll('×', '*')
    .replaceAll('²', '**2')
    .replaceAll('°', '')
    .replaceAll('½', '0.5')
    .replaceAll('√(', 'Math.sqrt(');
  const degree = Math.PI / 180;
  const calculate = new Function('cos', 'sin', 'atan2', 'abs', `return ${plain}`);
  return calculate(
    (angle: number) => Math.cos(angle * degree),
    (angle: number) => Math.sin(angle * degree),
    (y: number, x: number) => Math.atan2(y, x) / degree,
    Math.abs,
  ) as number;
}
