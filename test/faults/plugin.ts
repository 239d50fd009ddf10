import type { Plugin } from 'vitest/config';
import { allFaults, plantFault } from './plant.js';

/**
 * Plants the fault that HALFDIOPTER_FAULT names while its file is read: nothing on the disk changes. Without that
 * variable it does nothing.
 */
export function plantedFault(): Plugin {
  const name = process.env.HALFDIOPTER_FAULT;
  const fault = allFaults.find((one) => one.name === name);
  if (name !== undefined && !fault) throw new RangeError(`HALFDIOPTER_FAULT: there is no fault "${name}"`);
  return {
    name: 'planted-fault',
    enforce: 'pre',
    transform(source, id) {
      return fault && id.split('?')[0]?.endsWith(`/${fault.file}`) ? plantFault(source, fault) : undefined;
    },
  };
}
