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
interface Lever { run: string; name: string; pivot: number[]; axis: number[]; zero: number[]; radius: number; anchor: number[]; rest: number; joint: number; knob: number[]; angle: number[] }
interface Gap { first: string; second: string; onFirst: number[]; onSecond: number[]; distance: number; hits: boolean }
interface Model { bodies: Body[]; joints: Joint[]; lines: { run: string; name: string; points: number[] }[]; levers: Lever[]; gates: { name: string; terms: { joint: number; factor: number }[]; most: number }[]; eye: number[] | null; gap: Gap | null }
interface Reply { onFirst: number[]; onSecond: number[]; text: string }
interface Page { invokeMethodAsync(name: string, ...args: unknown[]): Promise<Reply | null> }

const vector = (v: number[], at = 0) => new Vector3(v[at], v[at + 1], v[at + 2]);

class View extends Stage {
  private readonly marks = new Group();
  private model: Model | null = null;
  private moved: { object: Object3D; joints: number[]; home: Matrix4 }[] = [];
  /** Everything that can be picked, with the name it is told by. */
  private things: { object: Object3D; name: string; run: string }[] = [];
  private pickedName = '';
  private arms: { group: Object3D; wire: Line; lever: Lever }[] = [];
  private positions: number[] = [];
  private away = 1.4;
  private asking = false;
  private hovering = false;
  private wanted = false;
  private measuring: Vector3[] = [];
  private lastGap: Reply | null = null;
  private bounds = new Box3();

  constructor(canvas: HTMLCanvasElement, private readonly page: Page) {
    super(canvas, new PerspectiveCamera(32, 1, 0.02, 30), 'data-look');
    this.turn = 0.6;
    this.scene.add(this.marks);
    document.addEventListener('click', (e) => this.click(e), { signal: this.listeners.signal });
    canvas.addEventListener('pointermove', (e) => this.hover(e), { signal: this.listeners.signal });
  }

  async load(address: string): Promise<void> {
    const answer = await fetch(address);
    if (answer.ok) this.show((await answer.json()) as Model);
  }

  /** What is tried comes straight from the program; what is kept, by its address. */
  show(model: Model): void {
    this.model = model;
    this.positions = this.model.joints.map((j) => j.at);
    this.measuring = [];
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
    this.things = [];
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
      this.things.push({ object: solid, name: body.name, run: body.run });
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
      const conduit = new Line(new BufferGeometry().setFromPoints(points), new LineBasicMaterial({ color: ink }));
      this.content.add(conduit);
      this.things.push({ object: conduit, name: line.name, run: line.run });
    }

    for (const lever of this.model.levers) {
      const axis = vector(lever.axis), zero = vector(lever.zero), across = axis.clone().cross(zero), half = 0.006;
      const group = new Group();
      const shape = [zero.clone().multiplyScalar(lever.radius).addScaledVector(across, half), zero.clone().multiplyScalar(lever.radius).addScaledVector(across, -half), across.clone().multiplyScalar(-half), across.clone().multiplyScalar(half)];
      const plate = new BufferGeometry().setFromPoints([shape[0], shape[1], shape[2], shape[0], shape[2], shape[3]]);
      plate.computeVertexNormals();
      const sheet = new Mesh(plate, new MeshBasicMaterial({ color: paper, side: 2 }));
      sheet.name = lever.name;
      group.add(sheet, new LineSegments(new EdgesGeometry(plate), new LineBasicMaterial({ color: ink })));
      const wire = new Line(new BufferGeometry().setFromPoints([vector(lever.anchor), vector(lever.pivot)]), new LineBasicMaterial({ color: ink }));
      this.content.add(group, wire);
      this.arms.push({ group, wire, lever });
      this.things.push({ object: group, name: lever.name, run: lever.run }, { object: wire, name: lever.name, run: lever.run });
    }

    this.place();
    this.bounds = new Box3().setFromObject(this.content);
    this.showGap(this.model.gap ? { onFirst: this.model.gap.onFirst, onSecond: this.model.gap.onSecond, text: '' } : null);
    this.shine();
    this.draw();
  }

  /** What is picked stands out with the rest of its run; everything else steps back. */
  private shine(): void {
    const own = this.things.filter((t) => t.name === this.pickedName), run = own.find((t) => t.run !== '')?.run;
    for (const { object, name, run: of } of this.things) {
      const fades = own.length > 0 && name !== this.pickedName && (run === undefined || of !== run);
      object.traverse((o) => {
        const material = (o as Partial<Mesh>).material;
        for (const m of Array.isArray(material) ? material : material ? [material] : []) {
          m.userData.whole ??= m.opacity;
          m.opacity = m.userData.whole * (fades ? 0.2 : 1);
          m.transparent = m.opacity < 1;
          m.needsUpdate = true;
        }
      });
    }
    this.canvas.dataset.picked = own.length > 0 ? this.pickedName : '';
  }

  /** Picked elsewhere on the page: shown here. */
  pick(name: string): void {
    this.pickedName = name;
    this.shine();
    const own = this.things.find((t) => t.name === name);
    if (own) {
      // Where it is seen, px: its middle.
      const p = new Box3().setFromObject(own.object).getCenter(new Vector3()).project(this.camera);
      this.canvas.dataset.at = `${Math.round(((p.x + 1) / 2) * this.canvas.clientWidth)},${Math.round(((1 - p.y) / 2) * this.canvas.clientHeight)}`;
    }
    this.draw();
  }

  /** Two places with names that were chosen elsewhere on the page: the line between them. */
  measure(places: number[][]): void {
    this.measuring = places.map((p) => vector(p));
    this.showGap(this.lastGap);
    this.draw();
  }

  /** How far a joint may go with the others where they are: its own stops, and the limits that joints have together. */
  private rangeOf(index: number): { from: number; to: number; low: string; high: string } {
    const joint = this.model!.joints[index];
    let [from, to, low, high] = [joint.from, joint.to, '', ''];
    for (const gate of this.model!.gates) {
      let factor = 0, rest = gate.most;
      for (const term of gate.terms)
        if (term.joint === index) factor += term.factor;
        else if (term.joint >= 0) rest -= term.factor * this.positions[term.joint];
      if (factor > 0 && rest / factor < to) [to, high] = [rest / factor, gate.name];
      else if (factor < 0 && rest / factor > from) [from, low] = [rest / factor, gate.name];
    }
    // Where the others stand beyond a limit already, this one stays.
    return from > to ? { from: this.positions[index], to: this.positions[index], low, high } : { from, to, low, high };
  }

  /** Puts a joint as near to a position as its limits let it, and everything linked with it; its slider goes along. */
  private put(index: number, wanted: number): void {
    const { from, to, low, high } = this.rangeOf(index);
    this.positions[index] = Math.min(to, Math.max(from, wanted));
    const slider = document.querySelector<HTMLInputElement>(`input[data-index="${index}"]`);
    if (slider) {
      slider.value = String(this.positions[index]);
      this.tell(slider, wanted > to ? high : wanted < from ? low : '');
    }
    this.place();
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
      object.matrixWorldNeedsUpdate = true;
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

  private hitAt(e: PointerEvent): { point: Vector3; object: Object3D; name: string } | null {
    const box = this.canvas.getBoundingClientRect();
    const ray = new Raycaster();
    // A wire is thin: a finger's breadth at the distance looked from is near enough.
    ray.params.Line.threshold = 0.006 * this.away;
    ray.setFromCamera(new Vector2(((e.clientX - box.left) / box.width) * 2 - 1, 1 - ((e.clientY - box.top) / box.height) * 2), this.camera);
    const found = ray.intersectObjects(this.things.map((t) => t.object), true)
      .filter((h) => h.object instanceof Mesh ? h.object.name !== '' : this.things.some((t) => t.object === h.object))
      .filter((h) => this.cut.distanceToPoint(h.point) >= 0);
    // A wire just in front of or behind a surface is hit as well as the surface: the surface counts, unless the wire is clearly nearer.
    const hit = found.find((h) => h.object instanceof Mesh || !found.some((o) => o.object instanceof Mesh && o.distance < h.distance + 0.02));
    if (!hit) return null;
    const thing = this.things.find((t) => { for (let o: Object3D | null = hit.object; o; o = o.parent) if (o === t.object) return true; return false; });
    return thing ? { point: hit.point, object: thing.object, name: thing.name } : null;
  }

  /** Under the pointer: whether it can be taken hold of is shown before it is tried. */
  private hover(e: PointerEvent): void {
    if (e.buttons !== 0 || this.hovering) return;
    this.hovering = true;
    requestAnimationFrame(() => {
      this.hovering = false;
      const hit = this.model ? this.hitAt(e) : null;
      this.canvas.dataset.over = hit?.name ?? '';
      this.canvas.style.cursor = hit ? (this.freeOf(hit.object).length > 0 ? 'grab' : 'pointer') : '';
    });
  }

  /** Free joints that move it. */
  private freeOf(object: Object3D): number[] {
    const body = this.moved.find((m) => m.object === object), arm = this.arms.find((a) => a.group === object || a.wire === object);
    const moving = body ? body.joints : arm && arm.lever.joint >= 0 ? [arm.lever.joint] : [];
    return [...new Set(moving.map((j) => this.model!.joints[j].leader >= 0 ? this.model!.joints[j].leader : j))].filter((j) => this.model!.joints[j].to > this.model!.joints[j].from);
  }

  /**
   * A hand on something that moves: of all joints that move the place it holds, the one that goes the hand's way follows it, as far as its
   * limits let it, and all that is linked goes along.
   */
  protected override taken(start: PointerEvent): ((e: PointerEvent) => void) | null {
    const hit = this.hitAt(start);
    if (!hit || !this.model) return null;
    const arm = this.arms.find((a) => a.group === hit.object || a.wire === hit.object), free = this.freeOf(hit.object);
    if (free.length === 0) return null;
    const held = arm?.wire === hit.object ? arm.group : hit.object;
    held.updateWorldMatrix(true, false);
    const local = held.worldToLocal(hit.point.clone()), box = this.canvas.getBoundingClientRect();
    const seen = (index: number, q: number): Vector2 => {
      const was = this.positions[index];
      this.positions[index] = q;
      this.place();
      held.updateWorldMatrix(true, false);
      const p = held.localToWorld(local.clone()).project(this.camera);
      this.positions[index] = was;
      this.place();
      return new Vector2(((p.x + 1) / 2) * box.width, ((1 - p.y) / 2) * box.height);
    };
    /** How the place that is held goes over the screen, px for each rad or m. */
    const rate = (index: number): Vector2 => {
      const joint = this.model!.joints[index], step = 0.002 * (joint.to - joint.from), q = this.positions[index];
      return seen(index, q + step).sub(seen(index, q - step)).divideScalar(2 * step);
    };
    const from = new Vector2(start.clientX - box.left, start.clientY - box.top);
    let chosen = -1;
    return (e) => {
      const hand = new Vector2(e.clientX - box.left, e.clientY - box.top);
      if (chosen < 0) {
        const way = hand.clone().sub(from).normalize();
        let best = 0;
        for (const index of free) {
          const r = rate(index), joint = this.model!.joints[index];
          // Its whole range, as it would be seen along the hand's way; nearly end on it can't be drawn.
          const reach = Math.abs(r.dot(way)) * (joint.to - joint.from), turn = r.length() > 0 ? Math.abs(r.dot(way)) / r.length() : 0;
          const fit = reach < 3 ? 0 : turn;
          if (fit > best) [best, chosen] = [fit, index];
        }
        if (chosen < 0) return;
        this.canvas.dataset.dragged = this.model!.joints[chosen].name;
      }
      let q = this.positions[chosen];
      const joint = this.model!.joints[chosen];
      for (let i = 0; i < 4; i++) {
        const at = seen(chosen, q), was = this.positions[chosen];
        this.positions[chosen] = q;
        const r = rate(chosen);
        this.positions[chosen] = was;
        if (r.lengthSq() === 0) break;
        q = Math.min(joint.to + 0.5 * (joint.to - joint.from), Math.max(joint.from - 0.5 * (joint.to - joint.from), q + hand.clone().sub(at).dot(r) / r.lengthSq()));
      }
      this.put(chosen, q);
      void this.ask();
    };
  }

  /** What was clicked is picked; between two places that were clicked, the distance of the picture, to the tenth of a millimetre of its corners. */
  protected override picked(e: PointerEvent): void {
    const hit = this.hitAt(e), text = document.getElementById('measured');
    if (!hit) {
      this.measuring = [];
      if (text) text.textContent = '';
    } else {
      if (this.measuring.length > 1) this.measuring = [];
      this.measuring.push(hit.point);
      if (text) {
        const inches = document.querySelector('.switch [aria-pressed="true"]')?.textContent === 'in';
        const d = this.measuring.length === 2 ? this.measuring[0].distanceTo(this.measuring[1]) : 0;
        text.textContent = this.measuring.length === 2 ? `Between the two places clicked: ${inches ? `${(d / 0.0254).toFixed(2)} in` : `${(d * 1000).toFixed(0)} mm`}, of the picture.` : `First place: on ${hit.name}.`;
      }
    }
    this.pick(hit?.name ?? '');
    this.showGap(this.lastGap);
    this.draw();
    void this.page.invokeMethodAsync('Pick', hit?.name ?? '').catch(() => null);
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
      this.put(Number(slider.dataset.index), Number(slider.value));
      void this.ask();
    }
  }

  /** @param stop Name of the limit that stopped it; empty: none. */
  private tell(slider: HTMLInputElement, stop = ''): void {
    const out = document.querySelector<HTMLElement>(`output[data-of="${slider.id}"]`);
    const v = Number(slider.value), inches = document.querySelector('.switch [aria-pressed="true"]')?.textContent === 'in';
    const text = slider.dataset.kind === 'turn' ? `${((v * 180) / Math.PI).toFixed(1)}°` : inches ? `${(v / 0.0254).toFixed(3)} in` : `${(v * 1000).toFixed(1)} mm`;
    const said = text.replace('-', '−') + (stop ? `, stopped: ${stop}` : '');
    if (out) out.textContent = said;
    slider.setAttribute('aria-valuetext', said);
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
