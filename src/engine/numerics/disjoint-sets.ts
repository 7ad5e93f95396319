/** Union of things numbered 0 to count - 1 into sets; the number of a set is the smallest number in it. */
export class DisjointSets {
  private readonly parent: Int32Array;

  constructor(count: number) {
    this.parent = Int32Array.from({ length: count }, (_, i) => i);
  }

  find(thing: number): number {
    let root = thing;
    while (this.parent[root] !== root) {
      this.parent[root] = this.parent[this.parent[root] as number] as number;
      root = this.parent[root] as number;
    }
    return root;
  }

  join(a: number, b: number): void {
    const [rootA, rootB] = [this.find(a), this.find(b)];
    if (rootA < rootB) this.parent[rootB] = rootA;
    else this.parent[rootA] = rootB;
  }
}
