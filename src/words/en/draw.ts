/** English words: one figure drawn again. */
export const draw = {
  help: {
    about: 'one figure again, with another width, form, cohort, palette or language',
    figure: 'name of the figure, as in audit.yaml: prediction-error',
    artwork: 'for what it is drawn: journal-single, journal-middle, journal-double, slide, web, or a profile of yours',
    width: 'width in print, mm',
    format: 'svg, png, pdf, tiff; several are named one after the other',
    cohort: 'a cohort to show, by name; may be given again; all: every eye as one group',
    palette: 'colour, okabe-ito or grey',
  },
  drawn: (title: string) => `Drawn: ${title}`,
  next: 'look at it at its final size',
  noFigure: (name: string) => `Not drawn. These data allow no figure ‘${name}’.`,
  noCohort: (names: string) => `Not drawn. The figures of this audit do not tell a cohort ‘${names}’ apart.`,
  noArtwork: (name: string) => `Not drawn. ‘${name}’ is not a profile of artwork.`,
  noRoom: (least: string) => `Not drawn. With letters of this size a figure needs ${least} mm or more.`,
  known: 'Known',
  nearest: 'Nearest',
} as const;
