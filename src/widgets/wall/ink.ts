/** Lines drawn over the page by hand: only shown, never kept. Points in px of the window. */
export type Stroke = readonly (readonly [x: number, y: number])[]

/** Widths of the pen and of the light edge round it, px. */
const PEN = { width: 6, edge: 11 }

/** Draws all strokes anew: a light edge under each, so that it is seen on any ground. */
export function drawInk(
  canvas: HTMLCanvasElement,
  strokes: readonly Stroke[],
  colours: readonly [pen: string, edge: string],
): void {
  const scale = devicePixelRatio
  const [width, height] = [innerWidth * scale, innerHeight * scale]
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width
    canvas.height = height
  }
  const pen = canvas.getContext('2d')
  if (!pen) return
  pen.setTransform(scale, 0, 0, scale, 0, 0)
  pen.clearRect(0, 0, innerWidth, innerHeight)
  pen.lineCap = 'round'
  pen.lineJoin = 'round'
  const ways = strokes.map((stroke) => {
    const way = new Path2D()
    stroke.forEach(([x, y], k) => {
      if (k === 0) way.moveTo(x, y)
      way.lineTo(x, y)
    })
    return way
  })
  for (const [colour, wide] of [
    [colours[1], PEN.edge],
    [colours[0], PEN.width],
  ] as const) {
    pen.strokeStyle = colour
    pen.lineWidth = wide
    for (const way of ways) pen.stroke(way)
  }
}
