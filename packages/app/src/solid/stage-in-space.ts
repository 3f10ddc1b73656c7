import { Box3, type Object3D, PerspectiveCamera, Plane, Raycaster, Scene, Vector2, Vector3, WebGLRenderer } from 'three'
import { OrbitControls } from 'three/addons/controls/OrbitControls.js'
import { type DrawnSolids, drawSolids, type Inks } from './scene.ts'
import type { Solid } from './solids.ts'

export type Axis = 'x' | 'y' | 'z'
export type From = 'a' | 'b' | 'above' | 'sensor'

/** The view in space on one canvas. It draws when something changed and rests otherwise. */
export interface StageInSpace {
  readonly show: (solids: readonly Solid[], inks: Inks) => void
  /** Shows what moves, in place of what moved before; the rest stays. */
  readonly move: (solids: readonly Solid[], inks: Inks) => void
  readonly look: (from: From) => void
  /** Turns by a step: across and up in radians; nearer above 1, farther below. */
  readonly turn: (across_rad: number, up_rad: number, nearer: number) => void
  /** Takes away everything on the near side of a plane; undefined gives it back. Share 0 to 1 of the room. */
  readonly cut: (axis: Axis | undefined, share: number) => number
  /** What lies under a place of the canvas, in CSS px from its corner. */
  readonly under: (x_px: number, y_px: number) => Solid | undefined
  readonly resize: (width_px: number, height_px: number) => void
  readonly dispose: () => void
}

/** @returns undefined where the browser draws nothing in space */
export function stageInSpace(canvas: HTMLCanvasElement): StageInSpace | undefined {
  let renderer: WebGLRenderer
  try {
    renderer = new WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true })
  } catch {
    return undefined
  }
  renderer.setPixelRatio(Math.min(2, window.devicePixelRatio))
  const scene = new Scene()
  const camera = new PerspectiveCamera(40, 1, 50, 100_000)
  camera.up.set(0, 0, 1)
  const controls = new OrbitControls(camera, canvas)
  controls.maxPolarAngle = Math.PI * 0.55
  const plane = new Plane(new Vector3(-1, 0, 0), 0)
  let drawn: DrawnSolids | undefined
  let moving: DrawnSolids | undefined
  let solids: readonly Solid[] = []
  let asked = 0
  let gone = false
  let placed = false
  const draw = () => {
    asked = 0
    if (gone) return
    renderer.render(scene, camera)
  }
  const ask = () => {
    if (asked === 0) asked = requestAnimationFrame(draw)
  }
  controls.addEventListener('change', ask)

  const extent = () => {
    const box = new Box3()
    for (const child of drawn?.group.children ?? []) {
      const { kind } = child.userData['solid'] as Solid
      if (kind !== 'beams' && kind !== 'building' && kind !== 'floor' && kind !== 'grid') box.expandByObject(child)
    }
    return box
  }
  const look = (from: From) => {
    const box = extent()
    if (box.isEmpty()) return
    const middle = box.getCenter(new Vector3())
    const size = box.getSize(new Vector3()).length()
    const away = (0.62 * size) / Math.tan((camera.fov * Math.PI) / 360) / Math.min(1, Math.max(0.55, camera.aspect))
    const toward = {
      a: new Vector3(0.35, 1, 0.5),
      b: new Vector3(-0.35, -1, 0.5),
      above: new Vector3(0, -0.001, 1),
      sensor: new Vector3(0, 0, 1),
    }[from]
    controls.target.copy(middle)
    camera.position.copy(middle).addScaledVector(toward.normalize(), away)
    if (from === 'sensor') {
      const sensor = drawn?.group.children.find((child) => (child.userData['solid'] as Solid).kind === 'sensor')
      if (sensor) {
        camera.position.copy(sensor.position)
        camera.position.z += 120
        controls.target.set(middle.x, middle.y, 0)
      }
    }
    controls.update()
    ask()
  }

  return {
    show(next, inks) {
      if (drawn) {
        scene.remove(drawn.group)
        drawn.dispose()
      }
      solids = next
      drawn = drawSolids(solids, inks)
      scene.add(drawn.group)
      renderer.setClearColor(inks.ground)
      if (!placed) look('b')
      placed = true
      ask()
    },
    move(next, inks) {
      if (moving) {
        scene.remove(moving.group)
        moving.dispose()
      }
      moving = drawSolids(next, inks)
      scene.add(moving.group)
      ask()
    },
    look,
    turn(across_rad, up_rad, nearer) {
      const offset = camera.position.clone().sub(controls.target)
      const radius = offset.length() / nearer
      const azimuth = Math.atan2(offset.y, offset.x) + across_rad
      const polar = Math.min(controls.maxPolarAngle, Math.max(0.02, Math.acos(offset.z / offset.length()) - up_rad))
      camera.position.set(
        controls.target.x + radius * Math.sin(polar) * Math.cos(azimuth),
        controls.target.y + radius * Math.sin(polar) * Math.sin(azimuth),
        controls.target.z + radius * Math.cos(polar),
      )
      controls.update()
      ask()
    },
    cut(axis, share) {
      const box = extent().expandByScalar(400)
      const at_mm = axis === undefined ? 0 : box.min[axis] + share * (box.max[axis] - box.min[axis])
      renderer.clippingPlanes = axis === undefined ? [] : [plane]
      if (axis !== undefined) {
        // the half on the viewer's side goes; from above that is what is higher
        const viewer = axis === 'z' || camera.position[axis] > controls.target[axis] ? 1 : -1
        plane.normal.set(0, 0, 0)
        plane.normal[axis] = -viewer
        plane.constant = viewer * at_mm
      }
      ask()
      return at_mm
    },
    under(x_px, y_px) {
      const { clientWidth, clientHeight } = canvas
      const caster = new Raycaster()
      caster.params.Line.threshold = 25
      caster.setFromCamera(new Vector2((2 * x_px) / clientWidth - 1, 1 - (2 * y_px) / clientHeight), camera)
      const hits = caster.intersectObjects([...(moving?.group.children ?? []), ...(drawn?.group.children ?? [])] as Object3D[], true)
      const visible = hits.filter(({ point }) => renderer.clippingPlanes.every((each) => each.distanceToPoint(point) >= 0))
      const found = visible.map(({ object }) => object.userData['solid'] as Solid | undefined)
      return (
        found.find((solid) => solid !== undefined && solid.kind !== 'beams' && solid.kind !== 'floor' && solid.kind !== 'grid') ??
        found.find((solid) => solid !== undefined)
      )
    },
    resize(width_px, height_px) {
      renderer.setSize(width_px, height_px, false)
      camera.aspect = width_px / Math.max(1, height_px)
      camera.updateProjectionMatrix()
      ask()
    },
    dispose() {
      gone = true
      cancelAnimationFrame(asked)
      controls.dispose()
      drawn?.dispose()
      moving?.dispose()
      renderer.dispose()
      renderer.forceContextLoss()
    },
  }
}
