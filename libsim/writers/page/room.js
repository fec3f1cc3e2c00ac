// The set in three dimensions, to turn with the pointer or the keys. Drawn when something moves, and only after
// it was asked for.
import {
  AmbientLight, BufferAttribute, BufferGeometry, Color, DirectionalLight, DoubleSide, EdgesGeometry,
  LineBasicMaterial, LineLoop, LineSegments, Mesh, MeshLambertMaterial, MeshBasicMaterial, PerspectiveCamera, Scene, Spherical,
  Vector3, WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { dataOf, element, replaceStill, unpacked } from './page.js';

const vector = ([x, y, z]) => new Vector3(x, z, -y); // up is y there

/** Shapes of all things, from one run of bytes. */
function meshesOf(data, bytes) {
  let at = 0;
  const take = (Kind, count) => {
    const part = new Kind(bytes.slice(at, at + 2 * count).buffer);
    at += 2 * count;
    return part;
  };
  return data.things.map((thing) => {
    const corners = take(Int16Array, 3 * thing.corners), indices = take(Uint16Array, 3 * thing.triangles);
    const places = new Float32Array(corners.length);
    for (let i = 0; i < corners.length; i += 3) {
      places[i] = corners[i] / data.per_metre;
      places[i + 1] = corners[i + 2] / data.per_metre;
      places[i + 2] = -corners[i + 1] / data.per_metre;
    }
    const shape = new BufferGeometry();
    shape.setAttribute('position', new BufferAttribute(places, 3));
    shape.setIndex(new BufferAttribute(indices, 1));
    shape.computeVertexNormals();
    return { ...thing, shape };
  });
}

function outline(points, colour, width = 1) {
  return new LineLoop(new BufferGeometry().setFromPoints(points), new LineBasicMaterial({ color: colour, linewidth: width }));
}

class Stage {
  constructor(figure, data, bytes) {
    this.box = element('div', {
      className: 'stage', tabIndex: 0, role: 'application',
      'aria-label': 'The set in three dimensions. Arrow keys turn it, plus and minus come nearer and go back.',
    });
    this.renderer = new WebGLRenderer({ antialias: true, alpha: true });
    this.place = replaceStill(figure, this.box);
    this.box.append(this.renderer.domElement);
    this.place.append(element('p', { className: 'quiet' }, 'Draw to turn it, or use the arrow keys, plus and minus.'));
    this.scene = new Scene();
    this.camera = new PerspectiveCamera(42, 1.5, 0.02, 30);
    this.tags = [];
    this.build(data, bytes);
    this.listen();
    this.fit();
  }

  build(data, bytes) {
    const dark = matchMedia('(prefers-color-scheme: dark)').matches;
    const ink = new Color(dark ? '#a89e97' : '#686060');
    this.scene.add(new AmbientLight(0xffffff, 1.5));
    const light = new DirectionalLight(0xffffff, 2.4);
    light.position.copy(data.windows.length ? middleOf(data.windows[0].corners) : new Vector3(-1, 1, 0));
    light.position.y += 0.6;
    this.scene.add(light);
    for (const thing of meshesOf(data, bytes)) this.add(thing, ink);
    for (const window of data.windows) {
      const points = window.corners.map(vector);
      this.scene.add(outline(points, '#5b7fb0'));
      const pane = new BufferGeometry().setFromPoints([points[0], points[1], points[2], points[0], points[2], points[3]]);
      this.scene.add(new Mesh(pane, new MeshBasicMaterial({ color: '#7fa3d4', transparent: true, opacity: 0.22, side: DoubleSide, depthWrite: false })));
      this.tag(window.name, middleOf(window.corners));
    }
    this.addCamera(data, ink);
    this.controls = new OrbitControls(this.camera, this.renderer.domElement);
    this.controls.target.set(-0.2, 0.26, 0);
    this.controls.enablePan = false;
    this.controls.minDistance = 0.3;
    this.controls.maxDistance = 6;
    this.controls.maxPolarAngle = Math.PI * 0.495;
    this.camera.position.set(0.55, 1.35, 1.95);
    this.controls.update();
  }

  add(thing, ink) {
    const clear = thing.see_through;
    const material = new MeshLambertMaterial({
      color: thing.colour, side: DoubleSide, transparent: clear, opacity: clear ? 0.35 : 1, depthWrite: !clear,
    });
    this.scene.add(new Mesh(thing.shape, material));
    if (['board', 'cloth', 'table'].includes(thing.kind))
      this.scene.add(new LineSegments(new EdgesGeometry(thing.shape, 30), new LineBasicMaterial({ color: ink })));
    const named = thing.kind !== 'table' && !this.tags.some(({ name }) => name === thing.name);
    thing.shape.computeBoundingBox();
    const { min, max } = thing.shape.boundingBox;
    if (named) this.tag(thing.name, new Vector3((min.x + max.x) / 2, max.y + 0.02, (min.z + max.z) / 2));
  }

  addCamera(data, ink) {
    const lens = vector(data.lens), frame = data.frame.map(vector), lines = [];
    for (const corner of frame) lines.push(lens, corner);
    const cone = new LineSegments(new BufferGeometry().setFromPoints(lines), new LineBasicMaterial({ color: ink, transparent: true, opacity: 0.6 }));
    this.scene.add(cone, outline(frame, ink));
    this.tag('camera', lens);
  }

  tag(name, at) {
    const shown = element('span', { className: 'tag' }, name);
    this.box.append(shown);
    this.tags.push({ name, at, shown });
  }

  fit() {
    const { clientWidth: width, clientHeight: height } = this.box;
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.renderer.setSize(width, height, false);
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  draw() {
    this.renderer.render(this.scene, this.camera);
    for (const { at, shown } of this.tags) {
      const seen = at.clone().project(this.camera);
      const there = seen.z < 1 && Math.abs(seen.x) < 1 && Math.abs(seen.y) < 1;
      shown.hidden = !there;
      const x = ((seen.x + 1) / 2) * this.box.clientWidth, y = ((1 - seen.y) / 2) * this.box.clientHeight;
      shown.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -100%)`;
    }
    this.box.dataset.drawn = Number(this.box.dataset.drawn ?? 0) + 1;
  }

  turn(round, up, nearer = 1) {
    const way = new Spherical().setFromVector3(this.camera.position.clone().sub(this.controls.target));
    way.theta += round;
    way.phi = Math.min(Math.PI * 0.49, Math.max(0.05, way.phi + up));
    way.radius = Math.min(6, Math.max(0.3, way.radius * nearer));
    this.camera.position.setFromSpherical(way).add(this.controls.target);
    this.controls.update();
  }

  listen() {
    this.controls.addEventListener('change', () => this.draw());
    new ResizeObserver(() => this.fit()).observe(this.box);
    const step = Math.PI / 36;
    this.box.addEventListener('keydown', (event) => {
      const way = {
        ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step],
        '+': [0, 0, 0.9], '=': [0, 0, 0.9], '-': [0, 0, 1 / 0.9],
      }[event.key];
      if (!way) return;
      event.preventDefault();
      this.turn(...way);
    });
  }
}

function middleOf(corners) {
  const sum = new Vector3();
  for (const corner of corners) sum.add(vector(corner));
  return sum.divideScalar(corners.length);
}

/** Old machines without 3D keep the still. */
function canDraw() {
  const probe = document.createElement('canvas');
  return Boolean(probe.getContext('webgl2'));
}

for (const figure of document.querySelectorAll('[data-live="room"]')) {
  if (!canDraw()) continue;
  const button = element('button', { type: 'button' }, 'Turn it');
  button.onclick = async () => {
    const data = dataOf(figure);
    const bytes = await unpacked(data.meshes);
    button.parentElement.remove();
    new Stage(figure, data, bytes).box.focus();
  };
  figure.append(element('div', { className: 'buttons live-only' }, button));
}
