/**
 * Load transfer by the handbook against printed examples.
 *
 * [Barton]    Barton & Fieldhouse, Automotive Chassis Engineering, 2018, p. 174: lateral transfer at 0.6 g, geometric
 *             and unsprung parts; (b), eq. 3.18: roll gradient (seen). Its front total is misprinted and left out
 * [Gupta]     Hibbeler & Gupta, Engineering Mechanics: Dynamics, Ex. 17.5, p. 733 (seen, archived run)
 * [identity]  elastic part by roll rates; sum over axles is the moment over the track
 */
import { test } from 'node:test';
import {
  elasticTransfer,
  geometricTransfer,
  longitudinalTransfer,
  rollAngleOf,
  transferSum,
  unsprungTransfer,
} from '../../src/flatfloor/under-way/handbook.ts';
import { near } from '../near.ts';

const g = 9.81;

test('G04 (P) [Barton] p. 174: geometric and unsprung parts, rear total', () => {
  const a_y = 0.6 * g;
  const t = 1.46;
  // printed in whole newtons
  near(geometricTransfer({ m_sa: 0.54 * 1280, a_y, h_rc: 0.07, t }), 195, 0.6);
  near(geometricTransfer({ m_sa: 0.46 * 1280, a_y, h_rc: 0.32, t }), 760, 0.6);
  near(unsprungTransfer({ m_u: 140, a_y, h_u: 0.28, t }), 158, 0.6);
  near(unsprungTransfer({ m_u: 180, a_y, h_u: 0.3, t }), 218, 0.6);
  near(transferSum({ ΔF_u: 218, ΔF_g: 760, ΔF_e: 671 }), 1649, 0.5);
});

test('G26 (P) [Barton] p. 174 (b): roll gradient with the lean-over term', () => {
  const φ = rollAngleOf({ m_s: 1280, a_y: 1, h_φ: 0.365, K_1: 28_650, K_2: 0, g_0: g });
  // printed 0.0194 rad for 1 m/s² and 10.9° for 1 g
  near(φ, 0.0194, 0.00006);
  near((φ * g * 180) / Math.PI, 10.9, 0.05);
});

test('G21 (P) [Gupta] Ex. 17.5: rear wheels that slip', () => {
  const [m, mu, b, c, h] = [2000, 0.25, 1.25, 0.75, 0.3];
  // N_B = m g b/(b + c) + ΔF, a = μ N_B / m: solved for a
  const a_x = (mu * g * b) / (b + c - mu * h);
  const ΔF = longitudinalTransfer({ m, a_x, h, D: 0, h_D: 0, L: b + c });
  // printed to 0.01 kN and 0.01 m/s²
  near((m * g * b) / (b + c) + ΔF, 12.74e3, 5);
  near((m * g * c) / (b + c) - ΔF, 6.88e3, 5);
  near(a_x, 1.59, 0.005);
});

test('G06 (D) [identity] elastic part: 1000 N m of moment on 500 and 700 N m a degree', () => {
  const degree = Math.PI / 180;
  // no lean-over: free fall off
  const φ = rollAngleOf({ m_s: 1000, a_y: 1, h_φ: 1, K_1: 500 / degree, K_2: 700 / degree, g_0: 0 });
  near(φ / degree, 0.83333, 1e-5);
  near(elasticTransfer({ K_φy: 500 / degree, φ, t: 1.5 }), 277.78, 0.005);
  near(elasticTransfer({ K_φy: 700 / degree, φ, t: 1.45 }), 402.3, 0.005);
});

test('G05 (D) [identity] 6000 N at 1 g, 0.33 m, 1.5 m: 1320 N in all, wherever the roll centres are', () => {
  for (const h_rc of [0, 0.1, 0.33]) {
    const m = 6000 / g;
    const links = geometricTransfer({ m_sa: m, a_y: g, h_rc, t: 1.5 });
    const φ = rollAngleOf({ m_s: m, a_y: g, h_φ: 0.33 - h_rc, K_1: 2e5, K_2: 1e5, g_0: 0 });
    const springs = elasticTransfer({ K_φy: 3e5, φ, t: 1.5 });
    near(links + springs, 1320, 1e-6);
  }
});
