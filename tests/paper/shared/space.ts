// Vectors of the tests, by gl-matrix in double precision: no formula is shared with the kernel's own.
import { glMatrix, vec3 } from 'gl-matrix'
import type { Vec3 } from '../../../src/paper/index.ts'

glMatrix.setMatrixArrayType(Array as never)

export const DEG = 180 / Math.PI

export const RAD = Math.PI / 180

const plain = (v: vec3): Vec3 => [v[0], v[1], v[2]]

export const minus = (a: Vec3, b: Vec3): Vec3 => plain(vec3.subtract(vec3.create(), a, b))

export const plus = (a: Vec3, b: Vec3): Vec3 => plain(vec3.add(vec3.create(), a, b))

export const times = (a: Vec3, k: number): Vec3 => plain(vec3.scale(vec3.create(), a, k))

export const dotOf = (a: Vec3, b: Vec3): number => vec3.dot(a, b)

export const crossOf = (a: Vec3, b: Vec3): Vec3 => plain(vec3.cross(vec3.create(), a, b))

export const sizeOf = (a: Vec3): number => vec3.length(a)

export const apart = (a: Vec3, b: Vec3): number => vec3.distance(a, b)

export const unit = (a: Vec3): Vec3 => plain(vec3.normalize(vec3.create(), a))

/** The angle between two directions, degrees; as sharp near 0 and 180 as in between. */
export const between = (a: Vec3, b: Vec3): number => DEG * Math.atan2(sizeOf(crossOf(a, b)), dotOf(a, b))

/** The angle at `axis` between the half planes that hold `a` and `b`, degrees, 0 to 180. */
export const dihedral = (axis: Vec3, a: Vec3, b: Vec3): number => between(crossOf(axis, a), crossOf(axis, b))

/** The next number a computer can hold, upwards (way 1) or downwards (way -1); not for infinities. */
export function nextFloat(x: number, way: 1 | -1): number {
  if (x === 0) return way * Number.MIN_VALUE
  const bits = new BigInt64Array(new Float64Array([x]).buffer)
  bits[0] = (bits[0] as bigint) + BigInt(x > 0 ? way : -way)
  return new Float64Array(bits.buffer)[0] as number
}
