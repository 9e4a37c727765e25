// The formula set of the bench: 30 chained joint formulas in the language, by hand in TypeScript, and in mathjs's words.
// Numbers are invented; the three must give the same to 1e-12 before anything is timed.

/** Inputs: name, value in the language, SI value. */
export const inputs: readonly (readonly [name: string, text: string, si: number])[] = [
  ["d", "6 mm", 0.006],
  ["P", "1 mm", 0.001],
  ["F_x", "400 N", 400],
  ["mu", "0.14", 0.14],
  ["L_e", "9 mm", 0.009],
  ["tau", "17 MPa", 17e6],
  ["D_w", "10 mm", 0.01],
  ["E_p", "2400 MPa", 2400e6],
  ["E_s", "205000 MPa", 205e9],
  ["l_k", "12 mm", 0.012],
  ["R_p", "640 MPa", 640e6],
  ["D_o", "20 mm", 0.02],
  ["f_z", "5e-3 mm", 5e-6],
];

/** In the language; also read by mathjs, whose grammar has these operators. */
export const chain: readonly (readonly [name: string, expression: string])[] = [
  ["H", "sqrt(3) / 2 * P"],
  ["d_2", "d - 3/4 * H"],
  ["d_3", "d - 17/12 * H"],
  ["D_1", "d - 5/4 * H"],
  ["d_0", "(d_2 + d_3) / 2"],
  ["A_s", "pi / 4 * d_0^2"],
  ["A_3", "pi / 4 * d_3^2"],
  ["phi", "P / (pi * d_2)"],
  ["q", "1.5 * d_2 / d_0 * (phi + 1.155 * mu)"],
  ["nu", "0.9 / sqrt(1 + 3 * q^2)"],
  ["F_M", "nu * R_p * A_s"],
  ["D_k", "(D_w + 1.1 * d) / 2"],
  ["M_A", "F_M * (0.16 * P + 0.58 * d_2 * mu + D_k / 2 * mu)"],
  ["A_p", "pi / 4 * (D_o^2 - (1.1 * d)^2)"],
  ["k_p", "E_p * A_p / l_k"],
  ["k_s", "E_s * A_3 / l_k"],
  ["Phi", "k_s / (k_s + k_p)"],
  ["F_Z", "f_z * k_s * k_p / (k_s + k_p)"],
  ["F_V", "F_M - F_Z"],
  ["F_S", "F_V + Phi * F_x"],
  ["A_n", "0.5 * pi * D_1 * L_e"],
  ["F_n", "tau * A_n"],
  ["s_s", "F_S / A_s"],
  ["t_t", "16 * (M_A - F_M * D_k / 2 * mu) / (pi * d_3^3)"],
  ["s_v", "sqrt(s_s^2 + 3 * t_t^2)"],
  ["U_y", "s_v / R_p"],
  ["U_n", "1.5 * F_S / F_n"],
  ["p_b", "F_S / (pi / 4 * (D_w^2 - (1.1 * d)^2))"],
  ["F_K", "F_V - (1 - Phi) * F_x"],
  ["MS", "F_n / (1.5 * F_S) - 1"],
];

export const notebook = [
  ...inputs.map(([name, text]) => `${name} = ${text}`),
  ...chain.map(([name, expression]) => `${name} = ${expression}`),
].join("\n");

/** The same by hand on SI numbers, in the order of `chain`. */
export function byHand(at: ArrayLike<number>, out: Float64Array): void {
  const [d, P, F_x, mu, L_e, tau, D_w, E_p, E_s, l_k, R_p, D_o, f_z] = at as unknown as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const H = (Math.sqrt(3) / 2) * P;
  const d_2 = d - (3 / 4) * H;
  const d_3 = d - (17 / 12) * H;
  const D_1 = d - (5 / 4) * H;
  const d_0 = (d_2 + d_3) / 2;
  const A_s = (Math.PI / 4) * d_0 ** 2;
  const A_3 = (Math.PI / 4) * d_3 ** 2;
  const phi = P / (Math.PI * d_2);
  const q = ((1.5 * d_2) / d_0) * (phi + 1.155 * mu);
  const nu = 0.9 / Math.sqrt(1 + 3 * q ** 2);
  const F_M = nu * R_p * A_s;
  const D_k = (D_w + 1.1 * d) / 2;
  const M_A = F_M * (0.16 * P + 0.58 * d_2 * mu + (D_k / 2) * mu);
  const A_p = (Math.PI / 4) * (D_o ** 2 - (1.1 * d) ** 2);
  const k_p = (E_p * A_p) / l_k;
  const k_s = (E_s * A_3) / l_k;
  const Phi = k_s / (k_s + k_p);
  const F_Z = (f_z * k_s * k_p) / (k_s + k_p);
  const F_V = F_M - F_Z;
  const F_S = F_V + Phi * F_x;
  const A_n = 0.5 * Math.PI * D_1 * L_e;
  const F_n = tau * A_n;
  const s_s = F_S / A_s;
  const t_t = (16 * (M_A - ((F_M * D_k) / 2) * mu)) / (Math.PI * d_3 ** 3);
  const s_v = Math.sqrt(s_s ** 2 + 3 * t_t ** 2);
  out[0] = H;
  out[1] = d_2;
  out[2] = d_3;
  out[3] = D_1;
  out[4] = d_0;
  out[5] = A_s;
  out[6] = A_3;
  out[7] = phi;
  out[8] = q;
  out[9] = nu;
  out[10] = F_M;
  out[11] = D_k;
  out[12] = M_A;
  out[13] = A_p;
  out[14] = k_p;
  out[15] = k_s;
  out[16] = Phi;
  out[17] = F_Z;
  out[18] = F_V;
  out[19] = F_S;
  out[20] = A_n;
  out[21] = F_n;
  out[22] = s_s;
  out[23] = t_t;
  out[24] = s_v;
  out[25] = s_v / R_p;
  out[26] = (1.5 * F_S) / F_n;
  out[27] = F_S / ((Math.PI / 4) * (D_w ** 2 - (1.1 * d) ** 2));
  out[28] = F_V - (1 - Phi) * F_x;
  out[29] = F_n / (1.5 * F_S) - 1;
}
