/** Turns of a lens that are not merged: where it was put, where it went, where it stands. */
export const lensTurns = ['lens_placement_error', 'lens_rotation', 'lens_misalignment'] as const;
