export { PortTaken, type Running, type ServerOptions, startServer } from './start.ts';
