// What every 3D picture of the page shares: light in three flat tones, a plane that cuts, turning by hand and by key, drawing when something changed.
import {
  AmbientLight, Color, DataTexture, DirectionalLight, Group, NearestFilter, PerspectiveCamera, Plane, RedFormat, Scene, Vector3, WebGLRenderer, type Material, type Mesh,
} from 'three';

// Straight up and down have no turn of their own. rad
const high = 1.55;

export abstract class Stage {
  protected readonly scene = new Scene();
  protected readonly content = new Group();
  protected readonly listeners = new AbortController();
  // Three flat tones, as in a printed manual.
  protected readonly steps = new DataTexture(new Uint8Array([150, 205, 255]), 3, 1, RedFormat);
  protected readonly cut = new Plane(new Vector3(0, 1, 0), 1e3);
  protected readonly target = new Vector3();
  protected turn = 0;
  protected lift = 0.35;
  private readonly renderer: WebGLRenderer;
  private readonly resize: ResizeObserver;
  private readonly light: MutationObserver;
  private drawing = 0;

  /** @param looks The attribute of the buttons that look from a fixed side. */
  constructor(protected readonly canvas: HTMLCanvasElement, protected readonly camera: PerspectiveCamera, private readonly looks: string) {
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
    document.addEventListener('input', (e) => { if (e.target instanceof HTMLInputElement) this.slide(e.target); }, on);
    this.resize = new ResizeObserver(() => this.draw());
    this.resize.observe(canvas);
    this.light = new MutationObserver(() => this.build());
    this.light.observe(document.documentElement, { attributeFilter: ['data-light'] });
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.build(), on);
  }

  /** All objects anew, in the tones of the present light. */
  protected abstract build(): void;

  /** From the eye to what is looked at, m. */
  protected abstract distance(): number;

  protected abstract zoom(by: number): void;

  /** A slider of the page was moved. */
  protected abstract slide(slider: HTMLInputElement): void;

  /** A hand took hold of something that moves: what follows the hand from here on. Null: the picture is turned. */
  protected taken(_at: PointerEvent): ((e: PointerEvent) => void) | null { return null; }

  /** A place of the picture was clicked, not dragged. */
  protected picked(_at: PointerEvent): void { /* Nothing to pick. */ }

  dispose(): void {
    this.listeners.abort();
    this.resize.disconnect();
    this.light.disconnect();
    this.clear(this.scene);
    this.steps.dispose();
    this.renderer.dispose();
    this.renderer.forceContextLoss();
  }

  protected tone(name: string): Color {
    return new Color(getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim() || '#888');
  }

  protected clear(group: Group | Scene): void {
    group.traverse((o) => {
      const part = o as Partial<Mesh>;
      part.geometry?.dispose();
      const material = part.material as Material | Material[] | undefined;
      for (const m of Array.isArray(material) ? material : material ? [material] : []) m.dispose();
    });
    group.clear();
  }

  /** Which of the fixed sides is looked from now; none once it was turned by hand. */
  protected press(from: string | null): void {
    for (const button of document.querySelectorAll<HTMLElement>(`[${this.looks}]`)) button.setAttribute('aria-pressed', String(button.getAttribute(this.looks) === from));
  }

  protected draw(): void {
    this.drawing ||= requestAnimationFrame(() => {
      this.drawing = 0;
      const { clientWidth: w, clientHeight: h } = this.canvas;
      if (w === 0 || h === 0) return;
      this.renderer.setSize(w, h, false);
      this.camera.aspect = w / h;
      const away = this.distance(), c = Math.cos(this.lift);
      this.camera.position.set(c * Math.cos(this.turn), c * Math.sin(this.turn), Math.sin(this.lift)).multiplyScalar(away).add(this.target);
      this.camera.lookAt(this.target);
      this.camera.updateProjectionMatrix();
      this.renderer.render(this.scene, this.camera);
      this.canvas.dataset.frames = String(Number(this.canvas.dataset.frames ?? 0) + 1);
    });
  }

  private turned(by: number, up: number): void {
    this.turn += by;
    this.lift = Math.min(high, Math.max(-high, this.lift + up));
    this.press(null);
    this.draw();
  }

  private grab(start: PointerEvent): void {
    this.canvas.setPointerCapture(start.pointerId);
    let [x, y, way] = [start.clientX, start.clientY, 0];
    const done = new AbortController(), follow = this.taken(start);
    this.canvas.addEventListener('pointermove', (e) => {
      way += Math.abs(e.clientX - x) + Math.abs(e.clientY - y);
      if (follow === null) this.turned((x - e.clientX) * 0.008, (e.clientY - y) * 0.008);
      else if (way >= 4) follow(e);
      [x, y] = [e.clientX, e.clientY];
    }, { signal: done.signal });
    for (const end of ['pointerup', 'pointercancel'] as const)
      this.canvas.addEventListener(end, (e) => {
        done.abort();
        if (end === 'pointerup' && way < 4) this.picked(e);
      }, { signal: done.signal });
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
}

/** The canvas of that name. */
export function canvasOf(id: string): HTMLCanvasElement {
  const canvas = document.getElementById(id);
  if (!(canvas instanceof HTMLCanvasElement)) throw new Error(`No canvas ${id}`);
  return canvas;
}
