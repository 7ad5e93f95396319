/**
 * Elementary functions from basic arithmetic, the same last bit in every JavaScript engine (the built-in ones differ
 * between versions). Within 1 ulp (tan: 2.5). Methods and minimax coefficients: fdlibm 5.3 (Sun Microsystems 1993), which grants
 * free use; `pow` carries the logarithm in double-double arithmetic (Dekker 1971, Numer. Math. 18:224-242) instead.
 */

const words = new DataView(new ArrayBuffer(8));

function highWord(x: number): number {
  words.setFloat64(0, x);
  return words.getInt32(0);
}

function withHighWord(x: number, high: number): number {
  words.setFloat64(0, x);
  words.setInt32(0, high);
  return words.getFloat64(0);
}

/** 2^k for -1022 <= k <= 1023. */
function powerOfTwo(k: number): number {
  words.setInt32(0, (k + 1023) << 20);
  words.setInt32(4, 0);
  return words.getFloat64(0);
}

// ---------------------------------------------------------------------------------------------- exp, log, pow

const LN2_HIGH = 6.9314718036912381649e-1;
const LN2_LOW = 1.90821492927058770002e-10;
const INVERSE_LN2 = 1.442695040888963387;
const EXP_OVERFLOW = 709.782712893383973096;
const EXP_UNDERFLOW = -745.13321910194110842;

/** exp(x + tail), tail far smaller than x. */
function expWithTail(x: number, tail: number): number {
  if (Number.isNaN(x)) return x;
  if (x > EXP_OVERFLOW) return Number.POSITIVE_INFINITY;
  if (x < EXP_UNDERFLOW) return 0;
  const k = Math.floor(x * INVERSE_LN2 + 0.5);
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW - tail;
  const r = high - low;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.77777777770155933842e-3 +
            t * (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  const y = 1 - (low - (r * c) / (2 - c) - high);
  if (k >= -1021 && k <= 1023) return y * powerOfTwo(k);
  if (k > 1023) return y * 2 * powerOfTwo(1023);
  return y * powerOfTwo(k + 1000) * powerOfTwo(-1000);
}

export function exp(x: number): number {
  return expWithTail(x, 0);
}

/** Splits x > 0 into 2^k * m with m between sqrt(1/2) and sqrt(2). */
function splitExponent(x: number): { k: number; m: number } {
  let k = 0;
  let scaled = x;
  if (scaled < 2.2250738585072014e-308) {
    scaled *= 18014398509481984;
    k -= 54;
  }
  const high = highWord(scaled);
  k += (high >> 20) - 1023;
  const mantissaHigh = high & 0xfffff;
  const carry = (mantissaHigh + 0x95f64) & 0x100000;
  return { k: k + (carry >> 20), m: withHighWord(scaled, mantissaHigh | (carry ^ 0x3ff00000)) };
}

/** Natural logarithm; NaN below nought. */
export function log(x: number): number {
  if (Number.isNaN(x) || x < 0) return Number.NaN;
  if (x === 0) return Number.NEGATIVE_INFINITY;
  if (x === Number.POSITIVE_INFINITY) return x;
  const { k, m } = splitExponent(x);
  const f = m - 1;
  if (f === 0) return k * LN2_HIGH + k * LN2_LOW;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const odd =
    z *
    (6.66666666666673513e-1 +
      w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  const halfSquare = 0.5 * f * f;
  return k * LN2_HIGH - (halfSquare - (s * (halfSquare + even + odd) + k * LN2_LOW) - f);
}

const SPLITTER = 134217729;

/** Rounding error of a * b (Dekker's product). */
function productError(a: number, b: number, product: number): number {
  const aBig = SPLITTER * a;
  const aHigh = aBig - (aBig - a);
  const aLow = a - aHigh;
  const bBig = SPLITTER * b;
  const bHigh = bBig - (bBig - b);
  const bLow = b - bHigh;
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}

/** ln(x) as an unevaluated sum high + low, x > 0 and finite: 2 artanh(s) by its series, leading terms in two words. */
function logTwoWords(x: number): { high: number; low: number } {
  const { k, m } = splitExponent(x);
  const numerator = m - 1;
  const denominator = m + 1;
  const denominatorLow = m < 1 ? m - (denominator - 1) : 1 - (denominator - m);
  const s = numerator / denominator;
  const back = s * denominator;
  const sLow = (numerator - back - productError(s, denominator, back) - s * denominatorLow) / denominator;
  const z = s * s;
  const zLow = productError(s, s, z) + 2 * s * sLow;
  // s^3 / 3 in two words
  const cube = s * z;
  const cubeLow = productError(s, z, cube) + s * zLow + sLow * z;
  const third = cube / 3;
  const thirdBack = third * 3;
  const thirdLow = (cube - thirdBack - productError(third, 3, thirdBack) + cubeLow) / 3;
  let tail = 0;
  for (let n = 29; n >= 5; n -= 2) tail = tail * z + 1 / n;
  tail *= cube * z;
  // k ln 2 + 2 (s + third + tail), largest first
  const kHigh = k * LN2_HIGH;
  const kLow = k * LN2_LOW;
  let high = kHigh + 2 * s;
  let low = k === 0 ? 0 : 2 * s - (high - kHigh);
  const high2 = high + 2 * third;
  low += Math.abs(high) > Math.abs(2 * third) ? 2 * third - (high2 - high) : high - (high2 - 2 * third);
  high = high2;
  low += kLow + 2 * sLow + 2 * thirdLow + 2 * tail + k * LN2_TAIL;
  const sum = high + low;
  return { high: sum, low: low - (sum - high) };
}

/** ln 2 - LN2_HIGH - LN2_LOW. */
const LN2_TAIL = -1.9046543236148276e-26;

/** x to the power y, x >= 0. NaN for x < 0 unless y is a whole number. */
export function pow(x: number, y: number): number {
  if (y === 0) return 1;
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  if (x === 1) return 1;
  if (x < 0) {
    if (!Number.isInteger(y)) return Number.NaN;
    const size = pow(-x, y);
    return y % 2 === 0 ? size : -size;
  }
  if (x === 0) return y > 0 ? 0 : Number.POSITIVE_INFINITY;
  if (x === Number.POSITIVE_INFINITY) return y > 0 ? x : 0;
  if (!Number.isFinite(y)) return x > 1 === y > 0 ? Number.POSITIVE_INFINITY : 0;
  return toThePower(logTwoWords(x), y);
}

/** Power of a number whose logarithm is known, y being finite. */
function toThePower({ high, low }: { readonly high: number; readonly low: number }, y: number): number {
  const product = y * high;
  if (!Number.isFinite(product) || Math.abs(product) > 800) return product > 0 ? Number.POSITIVE_INFINITY : 0;
  return expWithTail(product, productError(y, high, product) + y * low);
}

const LOG_TEN = logTwoWords(10);

/** 10^x, as `pow` has it. */
export function tenTo(x: number): number {
  return x !== 0 && Number.isFinite(x) ? toThePower(LOG_TEN, x) : pow(10, x);
}

const LOG10_E = 4.3429448190325182765e-1;
const LOG10_E_LOW = 1.09831965021676511e-17;

/** Common logarithm; NaN below nought. */
export function log10(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY) return log(x);
  const { high, low } = logTwoWords(x);
  const product = high * LOG10_E;
  return product + (productError(high, LOG10_E, product) + high * LOG10_E_LOW + low * LOG10_E);
}

// ---------------------------------------------------------------------------------------------- sin, cos, tan

const TWO_OVER_PI = 6.36619772367581382433e-1;
const HALF_PI_1 = 1.57079632673412561417;
const HALF_PI_2 = 6.0771005063039659766e-11;
const HALF_PI_3 = 2.0222662487111664558e-21;
const HALF_PI_3_TAIL = 8.47842766036889956997e-32;

function kernelSin(x: number, tail: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    8.33333333332248946124e-3 +
    z *
      (-1.98412698298579493134e-4 +
        z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)));
  return x - (z * (0.5 * tail - v * r) - tail - v * -1.66666666666666324348e-1);
}

function kernelCos(x: number, tail: number): number {
  const z = x * x;
  const r =
    z *
    (4.16666666666666019037e-2 +
      z *
        (-1.38888888888741095749e-3 +
          z *
            (2.48015872894767294178e-5 +
              z * (-2.75573143513906633035e-7 + z * (2.0875723212981748279e-9 + z * -1.13596475577881948265e-11)))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * tail));
}

/** Quadrant and remainder of x over pi / 2, good for |x| below about 1e6, far beyond any angle used here. */
function reduceAngle(x: number): { quadrant: number; r: number; tail: number } {
  if (Math.abs(x) <= 0.7853981633974483) return { quadrant: 0, r: x, tail: 0 };
  const n = Math.floor(x * TWO_OVER_PI + 0.5);
  const first = x - n * HALF_PI_1;
  const secondPart = n * HALF_PI_2;
  const second = first - secondPart;
  const lost = first - second - secondPart;
  const thirdPart = n * HALF_PI_3;
  const third = second - (thirdPart - lost);
  const lostThird = second - third - (thirdPart - lost);
  const low = lostThird - n * HALF_PI_3_TAIL;
  const r = third + low;
  return { quadrant: ((n % 4) + 4) % 4, r, tail: third - r + low };
}

export function sin(x: number): number {
  const { quadrant, r, tail } = reduceAngle(x);
  if (quadrant === 0) return kernelSin(r, tail);
  if (quadrant === 1) return kernelCos(r, tail);
  return quadrant === 2 ? -kernelSin(r, tail) : -kernelCos(r, tail);
}

export function cos(x: number): number {
  const { quadrant, r, tail } = reduceAngle(x);
  if (quadrant === 0) return kernelCos(r, tail);
  if (quadrant === 1) return -kernelSin(r, tail);
  return quadrant === 2 ? -kernelCos(r, tail) : kernelSin(r, tail);
}

/** Tangent as sine over cosine: within 2.5 ulp. */
export function tan(x: number): number {
  return sin(x) / cos(x);
}

// ---------------------------------------------------------------------------------------------- atan, asin, acos

const ATAN_HIGH = [
  4.63647609000806093515e-1, 7.85398163397448278999e-1, 9.82793723247329054082e-1, 1.570796326794896558,
];
const ATAN_LOW = [
  2.26987774529616870924e-17, 3.06161699786838301793e-17, 1.39033110312309984516e-17, 6.12323399573676603587e-17,
];

export function atan(x: number): number {
  if (Number.isNaN(x)) return x;
  const { high, low } = atanParts(Math.abs(x), 0);
  return x < 0 ? -(high + low) : high + low;
}

/** atan(x + tail) as high + low for x >= 0 and a tail far smaller than x. */
function atanParts(x: number, tail: number): { high: number; low: number } {
  if (x > 7.378697629483821e19) return { high: ATAN_HIGH[3] as number, low: ATAN_LOW[3] as number };
  const shift = tail === 0 ? 0 : tail / (1 + x * x);
  let piece = -1;
  let t = x;
  if (x >= 0.4375) {
    if (x < 0.6875) [piece, t] = [0, (2 * x - 1) / (2 + x)];
    else if (x < 1.1875) [piece, t] = [1, (x - 1) / (x + 1)];
    else if (x < 2.4375) [piece, t] = [2, (x - 1.5) / (1 + 1.5 * x)];
    else [piece, t] = [3, -1 / x];
  }
  const z = t * t;
  const w = z * z;
  const odd =
    z *
    (3.33333333333329318027e-1 +
      w *
        (1.42857142725034663711e-1 +
          w *
            (9.09088713343650656196e-2 +
              w * (6.66107313738753120669e-2 + w * (4.97687799461593236017e-2 + w * 1.62858201153657823623e-2)))));
  const even =
    w *
    (-1.99999999998764832476e-1 +
      w *
        (-1.1111110405462355788e-1 +
          w * (-7.69187620504482999495e-2 + w * (-5.83357013379057348645e-2 + w * -3.6531572744216915527e-2))));
  const bend = t * (odd + even);
  if (piece < 0) return { high: t, low: shift - bend };
  return { high: ATAN_HIGH[piece] as number, low: t - (bend - (ATAN_LOW[piece] as number) - shift) };
}

const PI = 3.141592653589793116;
const PI_LOW = 1.2246467991473531772e-16;

/** Angle of the point (x, y), -pi to pi. */
export function atan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const top = Math.abs(y);
  const bottom = Math.abs(x);
  const ratio = top === bottom ? 1 : top / bottom;
  const back = ratio * bottom;
  const lost = (top - back - productError(ratio, bottom, back)) / bottom;
  const { high, low } = atanParts(top === 0 && bottom === 0 ? 0 : ratio, Number.isFinite(lost) ? lost : 0);
  let angle = high + low;
  if (x < 0 || Object.is(x, -0)) {
    const rest = PI - high;
    angle = rest + (PI - rest - high + PI_LOW - low);
  }
  return y < 0 || Object.is(y, -0) ? -angle : angle;
}

function arcRatio(z: number): number {
  const p =
    z *
    (1.66666666666666657415e-1 +
      z *
        (-3.25565818622400915405e-1 +
          z *
            (2.01212532134862925881e-1 +
              z * (-4.00555345006794114027e-2 + z * (7.91534994289814532176e-4 + z * 3.4793310759602116757e-5)))));
  const q =
    1 +
    z *
      (-2.40339491173441421878 +
        z * (2.02094576023350569471 + z * (-6.8828397160545329303e-1 + z * 7.70381505559019352791e-2)));
  return p / q;
}

const HALF_PI_LOW = 6.12323399573676603587e-17;

/** Arc sine, -pi/2 to pi/2; NaN beyond -1 to 1. */
export function asin(x: number): number {
  const size = Math.abs(x);
  if (!(size <= 1)) return Number.NaN;
  if (size < 0.5) return x + x * arcRatio(x * x);
  const { root, rootLow, ratio } = halfAngleRoot(size);
  const correction = 2 * (root + rootLow) * ratio - (HALF_PI_LOW - 2 * rootLow);
  const result = PI / 4 - (correction - (PI / 4 - 2 * root));
  return x < 0 ? -result : result;
}

/** sqrt((1 - x) / 2) as root + rootLow, root short enough to be squared exactly, and the arc ratio there; 0.5 <= x <= 1. */
function halfAngleRoot(x: number): { root: number; rootLow: number; ratio: number } {
  const z = (1 - x) * 0.5;
  const s = Math.sqrt(z);
  words.setFloat64(0, s);
  words.setInt32(4, 0);
  const root = words.getFloat64(0);
  return { root, rootLow: s === 0 ? 0 : (z - root * root) / (s + root), ratio: arcRatio(z) };
}

/** Arc cosine, 0 to pi; NaN beyond -1 to 1. */
export function acos(x: number): number {
  const size = Math.abs(x);
  if (!(size <= 1)) return Number.NaN;
  if (size < 0.5) return PI / 2 - (x - (HALF_PI_LOW - x * arcRatio(x * x)));
  if (x > 0) {
    const { root, rootLow, ratio } = halfAngleRoot(x);
    return 2 * (root + (ratio * (root + rootLow) + rootLow));
  }
  const z = (1 + x) * 0.5;
  const s = Math.sqrt(z);
  return PI - 2 * (s + (arcRatio(z) * s - HALF_PI_LOW));
}
