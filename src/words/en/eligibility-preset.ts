/** Why the ready-made rule for publications leaves an eye out. */
export const eligibilityPreset = {
  acuity: 'Corrected acuity worse than 6/12 after surgery',
  complication: 'Complication during surgery',
  cornea: 'Earlier corneal surgery',
  constant: 'Lens constant of another lens family',
};
