/** Turns and shifts places, without stretching them, so that they lie over others as well as they can. x and y by turns. */
export function alignTo(places: Float64Array, model: Float64Array): void {
  const nodes = places.length / 2
  const sum = (of: Float64Array, e: number): number => {
    let total = 0
    for (let i = e; i < of.length; i += 2) total += of[i] as number
    return total / nodes
  }
  const [px, py, mx, my] = [sum(places, 0), sum(places, 1), sum(model, 0), sum(model, 1)]
  let [along, across] = [0, 0]
  for (let i = 0; i < places.length; i += 2) {
    const [x, y] = [(places[i] as number) - px, (places[i + 1] as number) - py]
    const [u, v] = [(model[i] as number) - mx, (model[i + 1] as number) - my]
    along += x * u + y * v
    across += x * v - y * u
  }
  const size = Math.sqrt(along * along + across * across)
  const [cos, sin] = size === 0 ? [1, 0] : [along / size, across / size]
  for (let i = 0; i < places.length; i += 2) {
    const [x, y] = [(places[i] as number) - px, (places[i + 1] as number) - py]
    places[i] = cos * x - sin * y + mx
    places[i + 1] = sin * x + cos * y + my
  }
}
