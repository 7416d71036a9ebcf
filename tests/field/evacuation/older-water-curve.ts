/**
 * Saturation pressure of liquid water by the older release, Pa: an equation of another form, fitted by others to data.
 *
 * @param T - K, 273.16 to 647.096.
 * @source IAPWS SR1-86(1992), Revised Supplementary Release on Saturation Properties of Ordinary Water Substance, equation
 * (1); Wagner, W., Pruss, A., J. Phys. Chem. Ref. Data 22 (1993) 783 (from memory)
 */
export function olderWaterSaturationPressure(T: number): number {
  const tau = 1 - T / 647.096;
  const sum =
    -7.85951783 * tau +
    1.84408259 * tau ** 1.5 -
    11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3.5 -
    15.9618719 * tau ** 4 +
    1.80122502 * tau ** 7.5;
  return 22.064e6 * Math.exp((647.096 / T) * sum);
}
