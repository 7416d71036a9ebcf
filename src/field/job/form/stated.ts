/** A quantity as it was written down, with its value in SI. */
export interface Stated<T> {
  /** Value, SI. */
  readonly si: T;
  /** SI unit of the value. */
  readonly unit: string;
  /** Text as written: what the technician read. */
  readonly text: string;
}
