import {
  BoxGeometry,
  BufferGeometry,
  CanvasTexture,
  Color,
  CylinderGeometry,
  DoubleSide,
  EdgesGeometry,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
  type Material,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
  Shape as Outline,
  RepeatWrapping,
  ShapeGeometry,
  type Texture,
  Vector2,
} from 'three'
import type { Point, Solid, SolidKind } from './solids.ts'

/** Inks of the theme, as CSS has them. */
export interface Inks {
  readonly ground: string
  readonly sheet: string
  readonly ink: string
  readonly quiet: string
  readonly fill: string
  readonly unseen: string
  readonly rule: string
}

/** One group holds the whole door; `dispose` gives back what the graphics card holds of it. */
export interface DrawnSolids {
  readonly group: Group
  readonly dispose: () => void
}

/** Draws solids as ink on paper: thin fills that hide what is behind, and edges in ink. Each object carries its solid as `userData.solid`. */
export function drawSolids(solids: readonly Solid[], inks: Inks): DrawnSolids {
  const group = new Group()
  const used: { dispose: () => void }[] = []
  const keep = <T extends { dispose: () => void }>(thing: T): T => {
    used.push(thing)
    return thing
  }
  const materials = materialsOf(inks, keep)
  for (const solid of solids) {
    const drawn = objectOf(solid, materials, keep)
    drawn.userData['solid'] = solid
    for (const child of drawn.children) child.userData['solid'] = solid
    group.add(drawn)
  }
  return {
    group,
    dispose: () => {
      for (const thing of used) thing.dispose()
    },
  }
}

type Keep = <T extends { dispose: () => void }>(thing: T) => T
interface Materials {
  readonly face: Readonly<Record<SolidKind, Material>>
  readonly edge: Readonly<Record<SolidKind, Material>>
}

function materialsOf(inks: Inks, keep: Keep): Materials {
  const face = (color: string, opacity = 1, map?: Texture) =>
    keep(
      new MeshBasicMaterial({
        color: new Color(color),
        side: DoubleSide,
        transparent: opacity < 1,
        opacity,
        depthWrite: opacity === 1,
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
        ...(map ? { map } : {}),
      }),
    )
  const line = (color: string, opacity = 1) => keep(new LineBasicMaterial({ color: new Color(color), transparent: opacity < 1, opacity }))
  const dashed = (color: string) => keep(new LineDashedMaterial({ color: new Color(color), dashSize: 90, gapSize: 50 }))
  const hatch = keep(hatching(inks))
  const paper = face(inks.ground)
  return {
    face: {
      floor: face(inks.sheet),
      grid: paper,
      building: face(inks.fill, 0.9),
      fitting: face(inks.sheet, 0.4),
      thing: face(inks.fill),
      leaf: paper,
      zone: paper,
      unseen: face('#ffffff', 1, hatch),
      body: face(inks.ground, 0.8),
      sensor: face(inks.ink),
      beams: paper,
      moving: face(inks.sheet, 0.7),
    },
    edge: {
      floor: line(inks.quiet),
      grid: line(inks.rule),
      building: line(inks.ink),
      fitting: line(inks.quiet),
      thing: line(inks.ink),
      leaf: dashed(inks.quiet),
      zone: dashed(inks.ink),
      unseen: line(inks.ink),
      body: line(inks.ink),
      sensor: line(inks.ink),
      beams: line(inks.ink, 0.22),
      moving: line(inks.ink),
    },
  }
}

/** Ink lines at 45 degrees on the ground of what is unseen; one square is 128 px, laid out in mm by the shape's own coordinates. */
function hatching({ ink, unseen }: Inks): Texture {
  const canvas = document.createElement('canvas')
  canvas.width = canvas.height = 128
  const pen = canvas.getContext('2d')
  if (pen) {
    pen.fillStyle = unseen
    pen.fillRect(0, 0, 128, 128)
    pen.strokeStyle = ink
    pen.lineWidth = 7
    for (const shift of [-128, -64, 0, 64, 128]) {
      pen.beginPath()
      pen.moveTo(shift, 128)
      pen.lineTo(shift + 128, 0)
      pen.stroke()
    }
  }
  const texture = new CanvasTexture(canvas)
  texture.wrapS = texture.wrapT = RepeatWrapping
  texture.repeat.set(1 / 160, 1 / 160)
  texture.colorSpace = 'srgb'
  return texture
}

function objectOf({ kind, at }: Solid, { face, edge }: Materials, keep: Keep): Object3D {
  switch (at.shape) {
    case 'box':
    case 'post': {
      const geometry = keep(
        at.shape === 'box'
          ? new BoxGeometry(...at.size_mm)
          : new CylinderGeometry(at.radius_mm, at.radius_mm, at.height_mm, 48).rotateX(Math.PI / 2),
      )
      const drawn = solidWithEdges(geometry, face[kind], edge[kind], keep)
      drawn.position.set(...at.middle)
      if (at.shape === 'box') drawn.rotation.z = at.yaw_rad
      return drawn
    }
    case 'area':
      return areaOf(at.rings, face[kind], edge[kind], keep)
    case 'quads': {
      const geometry = keep(new BufferGeometry())
      const points = at.quads.flatMap(([a, b, c, d]) => [...a, ...b, ...c, ...a, ...c, ...d])
      geometry.setAttribute('position', new Float32BufferAttribute(points, 3))
      return solidWithEdges(geometry, face[kind], edge[kind], keep)
    }
    case 'lines':
      return linesOf(at.lines, edge[kind], keep)
  }
}

function solidWithEdges(geometry: BufferGeometry, face: Material, edge: Material, keep: Keep): Group {
  const group = new Group()
  group.add(new Mesh(geometry, face), new LineSegments(keep(new EdgesGeometry(geometry, 25)), edge))
  return group
}

function linesOf(lines: readonly (readonly [Point, Point])[], material: Material, keep: Keep): LineSegments {
  const geometry = keep(new BufferGeometry())
  geometry.setAttribute(
    'position',
    new Float32BufferAttribute(
      lines.flatMap(([from, to]) => [...from, ...to]),
      3,
    ),
  )
  const drawn = new LineSegments(geometry, material)
  if (material instanceof LineDashedMaterial) drawn.computeLineDistances()
  return drawn
}

const flat = (ring: readonly Point[]) => ring.map(([x, y]) => new Vector2(x, y))

/** Outlines run counter-clockwise and holes clockwise, as the judgement has them; heights are those of the floor at each corner. */
function areaOf(rings: readonly (readonly Point[])[], face: Material, edge: Material, keep: Keep): Group {
  const [outer = [], ...holes] = rings
  const outline = new Outline(flat(outer))
  outline.holes = holes.map((ring) => new Outline(flat(ring)))
  const geometry = keep(new ShapeGeometry(outline))
  const heights = new Map(rings.flat().map(([x, y, z]) => [`${Math.fround(x)} ${Math.fround(y)}`, z]))
  const positions = geometry.getAttribute('position')
  for (let i = 0; i < positions.count; i++) positions.setZ(i, heights.get(`${positions.getX(i)} ${positions.getY(i)}`) ?? 0)
  const group = new Group()
  const edges = rings.flatMap((ring) => ring.map((point, i) => [point, ring[(i + 1) % ring.length] as Point] as const))
  group.add(new Mesh(geometry, face), linesOf(edges, edge, keep))
  return group
}
