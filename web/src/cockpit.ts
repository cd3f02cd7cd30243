// The 3D view of the cockpit: bodies on their joints, handles, arms and conduits, the nearest two points.
// Poses are put together here so that a drag follows the hand; every distance comes from the program.
import {
  BackSide, BufferAttribute, BufferGeometry, CanvasTexture, EdgesGeometry, Group, Line, LineBasicMaterial, LineDashedMaterial, LineSegments, Matrix4, Mesh, MeshBasicMaterial,
  MeshToonMaterial, PerspectiveCamera, Quaternion, Raycaster, Sprite, SpriteMaterial, Vector2, Vector3, Box3, type Color, type Object3D,
} from 'three';
import { Stage, canvasOf } from './stage';

interface Part { name: string; points: number[]; normals: number[]; triangles: number[] }
interface Body { name: string; kind: string; run: string; colour: string; joints: number[]; home: number[]; parts: Part[] }
interface Joint { name: string; isTurn: boolean; through: number[]; axis: number[]; from: number; to: number; at: number; leader: number; ratio: number; offset: number }
interface Lever { run: string; pivot: number[]; axis: number[]; zero: number[]; radius: number; anchor: number[]; rest: number; joint: number; knob: number[]; angle: number[] }
interface Gap { first: string; second: string; onFirst: number[]; onSecond: number[]; distance: number; hits: boolean }
interface Model { bodies: Body[]; joints: Joint[]; lines: { run: string; points: number[] }[]; levers: Lever[]; eye: number[] | null; gap: Gap | null }
interface Reply { onFirst: number[]; onSecond: number[]; text: string }
interface Page { invokeMethodAsync(name: string, ...args: unknown[]): Promise<Reply | null> }

const vector = (v: number[], at = 0) => new Vector3(v[at], v[at + 1], v[at + 2]);

class View extends Stage {
  private readonly marks = new Group();
  private model: Model | null = null;
  private moved: { object: Object3D; joints: number[]; home: Matrix4 }[] = [];
  private arms: { group: Object3D; wire: Line; lever: Lever }[] = [];
  private positions: number[] = [];
  private away = 1.4;
  private asking = false;
  private wanted = false;
  private measuring: Vector3[] = [];
  private lastGap: Reply | null = null;
  private bounds = new Box3();

  constructor(canvas: HTMLCanvasElement, private readonly page: Page) {
    super(canvas, new PerspectiveCamera(32, 1, 0.02, 30), 'data-look');
    this.turn = 0.6;
    this.scene.add(this.marks);
    document.addEventListener('click', (e) => this.click(e), { signal: this.listeners.signal });
  }

  async load(address: string): Promise<void> {
    const answer = await fetch(address);
    if (answer.ok) this.show((await answer.json()) as Model);
  }

  /** What is tried comes straight from the program; what is kept, by its address. */
  show(model: Model): void {
    this.model = model;
    this.positions = this.model.joints.map((j) => j.at);
    this.build();
    this.look('gap');
    this.canvas.dataset.mounted = 'true';
  }

  private handleTone(colour: string): Color {
    const words = colour.toLowerCase().split(/[ ,/-]+/);
    const known = ['red', 'white', 'blue', 'black'].find((w) => words.includes(w));
    return this.tone(`knob-${known ?? (colour ? 'white' : 'black')}`);
  }

  protected build(): void {
    if (!this.model) return;
    this.clear(this.content);
    this.moved = [];
    this.arms = [];
    const ink = this.tone('ink'), throwTone = this.tone('throw'), paper = this.tone('paper'), edge = this.tone('edge'), blue = this.tone('blue');
    for (const body of this.model.bodies) {
      const h = body.home;
      const home = new Matrix4().set(h[0], h[3], h[6], h[9], h[1], h[4], h[7], h[10], h[2], h[5], h[8], h[11], 0, 0, 0, 1);
      const solid = new Group(), ghost = new Group();
      for (const part of body.parts) {
        const geometry = new BufferGeometry();
        geometry.setAttribute('position', new BufferAttribute(Float32Array.from(part.points, (v) => v / 1e4), 3));
        geometry.setIndex(part.triangles);
        if (part.normals.length > 0) geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(part.normals, (v) => v / 100), 3));
        else geometry.computeVertexNormals();
        const colour = body.kind === 'handle' && part.name !== 'shank' ? this.handleTone(body.colour)
          : body.kind === 'handle' ? edge.clone().lerp(paper, 0.4)
          : body.kind === 'mover' ? throwTone
          : paper.clone().lerp(edge, body.kind === 'sheet' ? 0.12 : 0.22);
        const isHand = part.name === 'hand';
        const mesh = new Mesh(geometry, new MeshToonMaterial({ color: colour, gradientMap: this.steps, transparent: isHand, opacity: isHand ? 0.15 : 1 }));
        mesh.name = body.name;
        solid.add(mesh);
        if (isHand) continue;
        // Ink edges: creases as lines, the outline as a thin shell seen from inside.
        const creases = new LineSegments(new EdgesGeometry(geometry, 40), new LineBasicMaterial({ color: ink }));
        const shell = new Mesh(geometry, new MeshBasicMaterial({ color: ink, side: BackSide }));
        (shell.material as MeshBasicMaterial).onBeforeCompile = (shader) => {
          shader.vertexShader = shader.vertexShader.replace('#include <begin_vertex>', 'vec3 transformed = position + normal * 0.0011;');
        };
        if (part.normals.length > 0) solid.add(shell);
        solid.add(creases);
        if (body.kind === 'mover') ghost.add(new Mesh(geometry, new MeshBasicMaterial({ color: blue, transparent: true, opacity: 0.1, depthWrite: false })));
      }
      this.content.add(solid);
      this.moved.push({ object: solid, joints: body.joints, home });
      // Thin blue: the ends of each joint's range.
      if (body.kind === 'mover' && body.joints.length > 0 && body.joints.length < 4) {
        for (let corner = 0; corner < 2 ** body.joints.length; corner++) {
          const copy = ghost.clone();
          copy.matrixAutoUpdate = false;
          copy.matrix.copy(this.pose(body.joints, (j, i) => ((corner >> i) & 1 ? this.model!.joints[j].to : this.model!.joints[j].from)).multiply(home));
          this.content.add(copy);
        }
      }
    }

    for (const line of this.model.lines) {
      const points: Vector3[] = [];
      for (let i = 0; i < line.points.length; i += 3) points.push(vector(line.points, i));
      this.content.add(new Line(new BufferGeometry().setFromPoints(points), new LineBasicMaterial({ color: ink })));
    }

    for (const lever of this.model.levers) {
      const axis = vector(lever.axis), zero = vector(lever.zero), across = axis.clone().cross(zero), half = 0.006;
      const group = new Group();
      const shape = [zero.clone().multiplyScalar(lever.radius).addScaledVector(across, half), zero.clone().multiplyScalar(lever.radius).addScaledVector(across, -half), across.clone().multiplyScalar(-half), across.clone().multiplyScalar(half)];
      const plate = new BufferGeometry().setFromPoints([shape[0], shape[1], shape[2], shape[0], shape[2], shape[3]]);
      plate.computeVertexNormals();
      group.add(new Mesh(plate, new MeshBasicMaterial({ color: paper, side: 2 })), new LineSegments(new EdgesGeometry(plate), new LineBasicMaterial({ color: ink })));
      const wire = new Line(new BufferGeometry().setFromPoints([vector(lever.anchor), vector(lever.pivot)]), new LineBasicMaterial({ color: ink }));
      this.content.add(group, wire);
      this.arms.push({ group, wire, lever });
    }

    this.place();
    this.bounds = new Box3().setFromObject(this.content);
    this.showGap(this.model.gap ? { onFirst: this.model.gap.onFirst, onSecond: this.model.gap.onSecond, text: '' } : null);
    this.draw();
  }

  /** Product of exponentials: each axis is given in aircraft axes with all joints at zero. */
  private pose(joints: number[], at: (joint: number, place: number) => number): Matrix4 {
    const whole = new Matrix4();
    joints.forEach((j, i) => {
      const joint = this.model!.joints[j], q = at(j, i), axis = vector(joint.axis);
      if (joint.isTurn) {
        const through = vector(joint.through);
        const turn = new Matrix4().makeRotationFromQuaternion(new Quaternion().setFromAxisAngle(axis, q));
        turn.setPosition(through.clone().sub(through.clone().applyMatrix4(turn)));
        whole.multiply(turn);
      } else {
        whole.multiply(new Matrix4().makeTranslation(axis.multiplyScalar(q)));
      }
    });
    return whole;
  }

  private place(): void {
    this.model?.joints.forEach((j, i) => {
      if (j.leader >= 0) this.positions[i] = j.offset + j.ratio * this.positions[j.leader];
    });
    for (const { object, joints, home } of this.moved) {
      object.matrixAutoUpdate = false;
      object.matrix.copy(this.pose(joints, (j) => this.positions[j]).multiply(home));
    }

    // Knob, wire and arm move together: the arm's angle at the knob's place comes from the program's own curve.
    for (const { group, wire, lever } of this.arms) {
      const pulled = lever.joint < 0 ? 0 : this.positions[lever.joint];
      let angle = lever.rest;
      const n = lever.knob.length;
      if (n > 1) {
        let i = lever.knob.findIndex((k) => k >= pulled);
        if (i < 0) i = n - 1;
        const a = Math.max(0, i - 1), span = lever.knob[i] - lever.knob[a];
        const t = span > 0 ? Math.min(1, Math.max(0, (pulled - lever.knob[a]) / span)) : 0;
        angle = lever.angle[a] + t * (lever.angle[i] - lever.angle[a]);
      }
      const pivot = vector(lever.pivot), turn = new Quaternion().setFromAxisAngle(vector(lever.axis), angle);
      group.position.copy(pivot);
      group.quaternion.copy(turn);
      const swivel = vector(lever.zero).multiplyScalar(lever.radius).applyQuaternion(turn).add(pivot);
      wire.geometry.setFromPoints([vector(lever.anchor), swivel]);
    }
  }

  private showGap(gap: Reply | null): void {
    this.clear(this.marks);
    if (gap) {
      const [a, b] = [vector(gap.onFirst), vector(gap.onSecond)];
      this.marks.add(new Line(new BufferGeometry().setFromPoints([a, b]), new LineBasicMaterial({ color: this.tone('blue'), depthTest: false })), this.dot(a), this.dot(b));
      const text = document.getElementById('gap');
      if (text && gap.text) text.textContent = gap.text;
    }
    if (this.measuring.length > 0) {
      for (const p of this.measuring) this.marks.add(this.dot(p));
      if (this.measuring.length === 2) {
        const line = new Line(new BufferGeometry().setFromPoints(this.measuring), new LineDashedMaterial({ color: this.tone('blue'), dashSize: 0.01, gapSize: 0.006, depthTest: false }));
        line.computeLineDistances();
        this.marks.add(line);
      }
    }
  }

  private dot(at: Vector3): Sprite {
    const size = 32, picture = document.createElement('canvas');
    picture.width = picture.height = size;
    const pen = picture.getContext('2d');
    if (pen) {
      pen.beginPath();
      pen.arc(size / 2, size / 2, size / 2 - 6, 0, 2 * Math.PI);
      pen.fillStyle = `#${this.tone('paper').getHexString()}`;
      pen.fill();
      pen.lineWidth = 6;
      pen.strokeStyle = `#${this.tone('blue').getHexString()}`;
      pen.stroke();
    }
    const dot = new Sprite(new SpriteMaterial({ map: new CanvasTexture(picture), depthTest: false, sizeAttenuation: false }));
    dot.position.copy(at);
    dot.scale.setScalar(0.014);
    return dot;
  }

  private look(from: string): void {
    const gap = this.model?.gap;
    const middle = this.bounds.getCenter(new Vector3()), size = this.bounds.getSize(new Vector3()).length();
    this.target.copy(gap ? vector(gap.onFirst).lerp(vector(gap.onSecond), 0.5) : middle);
    if (from === 'gap') [this.turn, this.lift, this.away] = [0.65, 0.45, 0.75];
    else if (from === 'left') [this.turn, this.lift, this.away] = [-Math.PI / 2, 0.06, Math.min(2.4, 0.8 * size)];
    else if (from === 'above') [this.turn, this.lift, this.away] = [0, Math.PI / 2 - 0.01, Math.min(2.4, 0.8 * size)];
    else if (from === 'eye' && this.model?.eye) {
      const to = vector(this.model.eye).sub(this.target);
      this.away = to.length();
      this.turn = Math.atan2(to.y, to.x);
      this.lift = Math.asin(to.z / this.away);
    }
    this.press(from);
    this.draw();
  }

  protected distance(): number {
    return this.away;
  }

  protected zoom(by: number): void {
    this.away = Math.min(6, Math.max(0.08, this.away * by));
    this.draw();
  }

  /** Distance between two places that were clicked: of the picture, to the tenth of a millimetre of its corners. */
  protected override picked(e: PointerEvent): void {
    const box = this.canvas.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(((e.clientX - box.left) / box.width) * 2 - 1, 1 - ((e.clientY - box.top) / box.height) * 2), this.camera);
    const hit = ray.intersectObjects(this.moved.map((m) => m.object), true).find((h) => h.object instanceof Mesh && h.object.name);
    const text = document.getElementById('measured');
    if (!hit) {
      this.measuring = [];
      if (text) text.textContent = '';
    } else {
      if (this.measuring.length > 1) this.measuring = [];
      this.measuring.push(hit.point);
      if (text) {
        const inches = document.querySelector('.switch [aria-pressed="true"]')?.textContent === 'in';
        const d = this.measuring.length === 2 ? this.measuring[0].distanceTo(this.measuring[1]) : 0;
        text.textContent = this.measuring.length === 2 ? `Between the two places: ${inches ? `${(d / 0.0254).toFixed(2)} in` : `${(d * 1000).toFixed(0)} mm`}.` : `First place: ${hit.object.name}.`;
      }
    }
    this.showGap(this.lastGap);
    this.draw();
  }

  protected slide(slider: HTMLInputElement): void {
    if (!this.model) return;
    if (slider.id === 'cut') {
      const share = Number(slider.value) / 100;
      this.cut.constant = share === 0 ? 1e3 : this.bounds.max.y - share * (this.bounds.max.y - this.bounds.min.y);
      this.cut.normal.set(0, -1, 0);
      const at = document.getElementById('cut-at');
      if (at) at.textContent = share === 0 ? 'whole' : `${slider.value} % from the right`;
      this.draw();
    } else if (slider.dataset.index) {
      this.positions[Number(slider.dataset.index)] = Number(slider.value);
      this.tell(slider);
      this.place();
      this.draw();
      void this.ask();
    }
  }

  private tell(slider: HTMLInputElement): void {
    const out = document.querySelector<HTMLElement>(`output[data-of="${slider.id}"]`);
    const v = Number(slider.value), inches = document.querySelector('.switch [aria-pressed="true"]')?.textContent === 'in';
    const text = slider.dataset.kind === 'turn' ? `${((v * 180) / Math.PI).toFixed(1)}°` : inches ? `${(v / 0.0254).toFixed(3)} in` : `${(v * 1000).toFixed(1)} mm`;
    if (out) out.textContent = text.replace('-', '−');
    slider.setAttribute('aria-valuetext', text);
  }

  private click(e: MouseEvent): void {
    const button = e.target instanceof Element ? e.target.closest<HTMLElement>('[data-look], #worst') : null;
    if (!button || !this.model) return;
    if (button.dataset.look) {
      this.look(button.dataset.look);
      return;
    }
    for (const slider of document.querySelectorAll<HTMLInputElement>('input[data-index]')) {
      slider.value = slider.dataset.worst ?? slider.value;
      this.positions[Number(slider.dataset.index)] = Number(slider.value);
      this.tell(slider);
    }
    this.place();
    this.look('gap');
    void this.ask();
  }

  /** One question at a time; of those that came meanwhile only the last. */
  private async ask(): Promise<void> {
    this.wanted = true;
    if (this.asking || !this.model) return;
    this.asking = true;
    while (this.wanted && this.model) {
      this.wanted = false;
      const positions = Object.fromEntries(this.model.joints.map((j, i) => [j.name, this.positions[i]]));
      const reply = await this.page.invokeMethodAsync('Nearest', positions).catch(() => null);
      this.lastGap = reply;
      this.showGap(reply);
      this.draw();
    }
    this.asking = false;
  }
}

export async function mount(id: string, address: string, page: Page): Promise<View> {
  const view = new View(canvasOf(id), page);
  await view.load(address);
  return view;
}
