import type { Camera, Stand } from '../drawing/view/camera.ts'

/** From where a card is seen. */
export interface Seen {
  readonly camera: Camera
  readonly stand: Stand
}

export const SEEN: Seen = { camera: { turn: -26, tilt: 36 }, stand: 'gutter' }
