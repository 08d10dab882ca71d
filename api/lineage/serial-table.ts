/** Registry serials and the dense numbers of their animals; grows, and forgets nothing. */
export class SerialTable {
  #serials = new Float64Array(64);
  #numbers = new Int32Array(64).fill(-1);
  #size = 0;

  /** Dense number of the animal with a serial; −1 where there is none. */
  find(serial: number): number {
    return this.#numbers[this.#placeOf(serial)] ?? -1;
  }

  /** Notes which animal has a serial. */
  set(serial: number, number: number): void {
    if (2 * (this.#size + 1) > this.#numbers.length) this.#grow();
    const place = this.#placeOf(serial);
    if (this.#numbers[place] === -1) this.#size++;
    this.#serials[place] = serial;
    this.#numbers[place] = number;
  }

  #placeOf(serial: number): number {
    const mask = this.#numbers.length - 1;
    let place = (Math.imul(serial, 0x9e3779b1) >>> 4) & mask;
    while (this.#numbers[place] !== -1 && this.#serials[place] !== serial) place = (place + 1) & mask;
    return place;
  }

  #grow(): void {
    const serials = this.#serials;
    const numbers = this.#numbers;
    this.#serials = new Float64Array(2 * serials.length);
    this.#numbers = new Int32Array(2 * numbers.length).fill(-1);
    this.#size = 0;
    numbers.forEach((number, place) => {
      if (number >= 0) this.set(serials[place] ?? 0, number);
    });
  }
}
