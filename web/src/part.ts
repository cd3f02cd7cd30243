// A part that is made, in 3D: the engine's own bodies (binary glTF 2.0), turned, cut open, pulled apart. It shows; it computes no figure.
import {
  Box3, BufferAttribute, BufferGeometry, DoubleSide, Group, LineBasicMaterial, LineDashedMaterial, Line, LineSegments, Matrix4, Mesh, MeshToonMaterial, PerspectiveCamera, Vector3,
} from 'three';
import { Stage, canvasOf } from './stage';

interface Glb {
  nodes: { name?: string; mesh?: number; matrix?: number[] }[];
  meshes: { primitives: { attributes: { POSITION: number; NORMAL?: number }; indices?: number; mode: number }[] }[];
  accessors: { bufferView: number; componentType: number; count: number; type: string }[];
  bufferViews: { byteOffset: number; byteLength: number }[];
}
interface Piece { name: string; group: Group; home: Vector3 }

class PartView extends Stage {
  private pieces: Piece[] = [];
  private bytes: ArrayBuffer | null = null;
  private size = 0.05;
  private near = 1;

  constructor(canvas: HTMLCanvasElement) {
    super(canvas, new PerspectiveCamera(26, 1, 0.001, 10), 'data-part-look');
    this.turn = -0.95;
    document.addEventListener('click', (e) => {
      const button = e.target instanceof Element ? e.target.closest<HTMLElement>('[data-part-look]') : null;
      if (button) this.look(button.dataset.partLook ?? '');
    }, { signal: this.listeners.signal });
  }

  async load(address: string): Promise<void> {
    const answer = await fetch(address);
    if (!answer.ok) return;
    this.bytes = await answer.arrayBuffer();
    this.build();
    // After the frame that build asked for.
    await new Promise(requestAnimationFrame);
    this.canvas.dataset.mounted = 'true';
  }

  /** Two chunks: what is there, and its numbers. Only what the program writes is read. */
  protected build(): void {
    if (!this.bytes) return;
    this.clear(this.content);
    this.pieces = [];
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
    this.press(from);
    this.draw();
  }

  protected zoom(by: number): void {
    this.near = Math.min(4, Math.max(0.25, this.near * by));
    this.draw();
  }

  protected distance(): number {
    return this.near * this.size * (this.pieces.length > 1 ? 3 : 2.3);
  }

  protected slide(slider: HTMLInputElement): void {
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
}

export async function mount(id: string, address: string): Promise<PartView> {
  const view = new PartView(canvasOf(id));
  await view.load(address);
  return view;
}
