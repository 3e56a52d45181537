export const usage =
  '--out FILE.svg [--opening DEGREES] [--turn=DEGREES] [--tilt DEGREES] [--far DIAGONALS] [--upright]'

export const help = 'Draw the standing card as the site does. --width and --height are in pixels.'

export const degrees = 'degrees'

export const cardDiagonals = 'diagonals of the card'

export const pixels = 'pixels'

export const notNumberIn = (
  option: string,
  min: number,
  max: number,
  unit: string,
  got: string | boolean,
): string => `--${option} must be a number from ${min} to ${max} ${unit}, not ${got}.`
