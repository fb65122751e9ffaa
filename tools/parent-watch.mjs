// @ts-check
// Loaded into the API before its own code: when the process that started it is gone, it drains and ends like on any stop.
process.on('disconnect', () => process.kill(process.pid, 'SIGTERM'));
process.channel?.unref(); // watching must not keep a drained API alive
