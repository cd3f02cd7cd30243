// A part that is made, in 3D: the engine's own bodies (binary glTF 2.0), turned, cut open, pulled apart. It shows; it computes no figure.
import {
  AmbientLight, Box3, BufferAttribute, BufferGeometry, Color, DataTexture, DirectionalLight, DoubleSide, Group, LineBasicMaterial, LineDashedMaterial, Line, LineSegments,
  Matrix4, Mesh, MeshToonMaterial, NearestFilter, PerspectiveCamera, Plane, RedFormat, Scene, Vector3, WebGLRenderer,
} from 'three';

interface Glb {
  nodes: { name?: string; mesh?: number; matrix?: number[] }[];
  meshes: { primitives: { attributes: { POSITION: number; NORMAL?: number }; indices?: number; mode: number }[] }[];
  accessors: { bufferView: number; componentType: number; count: number; type: string }[];
  bufferViews: { byteOffset: number; byteLength: number }[];
}
interface Piece { name: string; group: Group; home: Vector3 }

class PartView {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(26, 1, 0.001, 10);
  private readonly content = new Group();
  private readonly listeners = new AbortController();
  private readonly resize: ResizeObserver;
  private readonly light: MutationObserver;
  private readonly steps = new DataTexture(new Uint8Array([150, 205, 255]), 3, 1, RedFormat);
  private readonly cut = new Plane(new Vector3(0, 1, 0), 1e3);
  private pieces: Piece[] = [];
  private bytes: ArrayBuffer | null = null;
  private size = 0.05;
  private turn = -0.95;
  private lift = 0.35;
  private near = 1;
  private drawing = 0;

  constructor(private readonly canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.renderer.clippingPlanes = [this.cut];
    this.camera.up.set(0, 0, 1);
    const sun = new DirectionalLight(0xffffff, 2.2);
    sun.position.set(2, -1.5, 3);
    this.scene.add(sun, new AmbientLight(0xffffff, 1.1), this.content);
    this.steps.minFilter = this.steps.magFilter = NearestFilter;
    this.steps.needsUpdate = true;
    const on = { signal: this.listeners.signal };
    canvas.addEventListener('pointerdown', (e) => this.grab(e), on);
    canvas.addEventListener('wheel', (e) => { e.preventDefault(); this.zoom(Math.exp(e.deltaY * 0.001)); }, { ...on, passive: false });
    canvas.addEventListener('keydown', (e) => this.key(e), on);
    document.addEventListener('input', (e) => this.input(e), on);
    document.addEventListener('click', (e) => {
      const button = e.target instanceof Element ? e.target.closest<HTMLElement>('[data-part-look]') : null;
      if (button) this.look(button.dataset.partLook ?? '');
    }, on);
    this.resize = new ResizeObserver(() => this.draw());
    this.resize.observe(canvas);
    this.light = new MutationObserver(() => this.build());
    this.light.observe(document.documentElement, { attributeFilter: ['data-light'] });
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.build(), on);
  }

  async load(address: string): Promise<void> {
    const answer = await fetch(address);
    if (!answer.ok) return;
    this.bytes = await answer.arrayBuffer();
    this.build();
  }

  dispose(): void {
    this.listeners.abort();
    this.resize.disconnect();
    this.light.disconnect();
    this.clear();
    this.steps.dispose();
    this.renderer.dispose();
    this.renderer.forceContextLoss();
  }

  private tone(name: string): Color {
    return new Color(getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim() || '#888');
  }

  private clear(): void {
    this.content.traverse((o) => {
      if (o instanceof Mesh || o instanceof LineSegments || o instanceof Line) {
        o.geometry.dispose();
        o.material.dispose();
      }
    });
    this.content.clear();
    this.pieces = [];
  }

  /** Two chunks: what is there, and its numbers. Only what the program writes is read. */
  private build(): void {
    if (!this.bytes) return;
    this.clear();
    const head = new DataView(this.bytes), length = head.getUint32(12, true);
    const file = JSON.parse(new TextDecoder().decode(new Uint8Array(this.bytes, 20, length))) as Glb;
    const start = 20 + length + 8;
    const numbers = (accessor: number) => {
      const { bufferView, componentType, count, type } = file.accessors[accessor];
      const at = start + file.bufferViews[bufferView].byteOffset, n = count * (type === 'VEC3' ? 3 : 1);
      return componentType === 5126 ? new Float32Array(this.bytes!.slice(at, at + 4 * n)) : new Uint32Array(this.bytes!.slice(at, at + 4 * n));
    };
    const ink = this.tone('ink'), paper = this.tone('paper'), blue = this.tone('blue'), edge = this.tone('edge');
    for (const node of file.nodes) {
      if (node.mesh === undefined) continue;
      const group = new Group(), matrix = new Matrix4();
      if (node.matrix) matrix.fromArray(node.matrix);
      for (const primitive of file.meshes[node.mesh].primitives) {
        const geometry = new BufferGeometry();
        geometry.setAttribute('position', new BufferAttribute(numbers(primitive.attributes.POSITION), 3));
        if (primitive.mode === 1) {
          group.add(new LineSegments(geometry, new LineBasicMaterial({ color: ink })));
          continue;
        }
        if (primitive.attributes.NORMAL !== undefined) geometry.setAttribute('normal', new BufferAttribute(numbers(primitive.attributes.NORMAL), 3));
        if (primitive.indices !== undefined) geometry.setIndex(new BufferAttribute(numbers(primitive.indices), 1));
        const colour = node.name === 'sheet' ? paper.clone().lerp(edge, 0.14) : paper.clone().lerp(blue, 0.34);
        // Both sides: cut open, the inside is seen.
        group.add(new Mesh(geometry, new MeshToonMaterial({ color: colour, gradientMap: this.steps, side: DoubleSide, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 })));
      }
      group.matrixAutoUpdate = false;
      group.matrix.copy(matrix);
      this.content.add(group);
      this.pieces.push({ name: node.name ?? '', group, home: new Vector3().setFromMatrixPosition(matrix) });
    }
    this.content.position.set(0, 0, 0);
    this.content.rotation.set(0, 0, 0);
    this.content.updateMatrixWorld(true);
    const bounds = new Box3().setFromObject(this.content);
    const middle = bounds.getCenter(new Vector3());
    this.size = bounds.getSize(new Vector3()).length();
    // A pair lies with the shank's line level, the pilot at the right.
    if (this.pieces.length > 1) this.content.rotation.set(0, Math.PI / 2, 0);
    this.content.position.copy(middle.negate().applyEuler(this.content.rotation));
    this.apart();
    if (this.pieces.length > 1) {
      const axis = new Line(new BufferGeometry().setFromPoints([new Vector3(0, 0, -2 * this.size), new Vector3(0, 0, 2 * this.size)]), new LineDashedMaterial({ color: ink, dashSize: 0.004, gapSize: 0.002 }));
      axis.computeLineDistances();
      this.content.add(axis);
    }
    this.draw();
  }

  /** Along the sheet's normal: what is in front forward, what is behind back. */
  private apart(): void {
    const slider = document.getElementById('part-apart');
    const share = slider instanceof HTMLInputElement ? Number(slider.value) / 100 : 0;
    for (const { name, group, home } of this.pieces) {
      const side = this.pieces.length < 2 || name === 'sheet' ? 0 : Math.sign(home.z);
      group.matrix.setPosition(home.x, home.y, home.z + side * share * 0.45 * this.size);
    }
  }

  private look(from: string): void {
    [this.turn, this.lift] = from === 'the side' ? [-Math.PI / 2, 0] : from === 'along the axis' ? (this.pieces.length > 1 ? [0, 0] : [-Math.PI / 2, Math.PI / 2 - 0.001]) : [-0.95, 0.35];
    for (const button of document.querySelectorAll<HTMLElement>('[data-part-look]')) button.setAttribute('aria-pressed', String(button.dataset.partLook === from));
    this.draw();
  }

  private turned(by: number, up: number): void {
    this.turn += by;
    this.lift = Math.min(1.55, Math.max(-1.55, this.lift + up));
    for (const button of document.querySelectorAll('[data-part-look]')) button.setAttribute('aria-pressed', 'false');
    this.draw();
  }

  private zoom(by: number): void {
    this.near = Math.min(4, Math.max(0.25, this.near * by));
    this.draw();
  }

  private grab(start: PointerEvent): void {
    this.canvas.setPointerCapture(start.pointerId);
    let [x, y] = [start.clientX, start.clientY];
    const done = new AbortController();
    this.canvas.addEventListener('pointermove', (e) => {
      this.turned((x - e.clientX) * 0.008, (e.clientY - y) * 0.008);
      [x, y] = [e.clientX, e.clientY];
    }, { signal: done.signal });
    for (const end of ['pointerup', 'pointercancel'] as const) this.canvas.addEventListener(end, () => done.abort(), { signal: done.signal });
  }

  private key(e: KeyboardEvent): void {
    const step = e.shiftKey ? 0.02 : 0.12;
    switch (e.key) {
      case 'ArrowLeft': this.turned(-step, 0); break;
      case 'ArrowRight': this.turned(step, 0); break;
      case 'ArrowUp': this.turned(0, step); break;
      case 'ArrowDown': this.turned(0, -step); break;
      case '+': this.zoom(0.85); break;
      case '-': this.zoom(1.18); break;
      default: return;
    }
    e.preventDefault();
  }

  private input(e: Event): void {
    const slider = e.target;
    if (!(slider instanceof HTMLInputElement)) return;
    const say = (id: string, text: string) => { const out = document.getElementById(id); if (out) out.textContent = text; };
    if (slider.id === 'part-cut') {
      const share = Number(slider.value) / 100;
      this.cut.constant = share === 0 ? 1e3 : this.size * (0.5 - share);
      say('part-cut-at', share === 0 ? 'whole' : `${slider.value} %`);
    } else if (slider.id === 'part-apart') {
      say('part-apart-at', `${slider.value} %`);
      this.apart();
    } else {
      return;
    }
    this.draw();
  }

  private draw(): void {
    this.drawing ||= requestAnimationFrame(() => {
      this.drawing = 0;
      const { clientWidth: w, clientHeight: h } = this.canvas;
      if (w === 0 || h === 0) return;
      this.renderer.setSize(w, h, false);
      this.camera.aspect = w / h;
      const away = this.near * this.size * (this.pieces.length > 1 ? 3 : 2.9), c = Math.cos(this.lift);
      this.camera.position.set(away * c * Math.cos(this.turn), away * c * Math.sin(this.turn), away * Math.sin(this.lift));
      this.camera.lookAt(0, 0, 0);
      this.camera.updateProjectionMatrix();
      this.renderer.render(this.scene, this.camera);
      if (this.pieces.length > 0) this.canvas.dataset.mounted = 'true';
      this.canvas.dataset.frames = String(Number(this.canvas.dataset.frames ?? 0) + 1);
    });
  }
}

export async function mount(id: string, address: string): Promise<PartView> {
  const canvas = document.getElementById(id);
  if (!(canvas instanceof HTMLCanvasElement)) throw new Error(`No canvas ${id}`);
  const view = new PartView(canvas);
  await view.load(address);
  return view;
}
