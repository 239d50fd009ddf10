/**
 * The name of the report's folder, made from the title: letters a to z, digits and hyphens.
 *
 * @returns '' where the title has neither
 * @example reportName('Résultats 2025') // 'resultats-2025'
 */
export function reportName(title: string): string {
  const plain = title.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
}
