/** Processor time of this process in milliseconds: what else the machine does is left out. */
export function busy(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
