export function open(host) { host.append('soon'); return {}; }
