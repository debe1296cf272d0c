// What holds for every reply.

import assert from 'node:assert/strict';

/** Fails when any number in a value is infinite or none at all. */
export function assertFinite(value, path = 'reply') {
  if (typeof value === 'number') assert.ok(Number.isFinite(value), `${path} is ${value}`);
  if (value !== null && typeof value === 'object') {
    for (const [name, part] of Object.entries(value)) assertFinite(part, `${path}.${name}`);
  }
}

/** Fails unless the reply is a refusal that says where and why; returns its problems. */
export function assertProblems(reply) {
  assert.equal(reply.ok, false, JSON.stringify(reply));
  assert.ok(reply.problems.length > 0);
  for (const { field, code, message } of reply.problems) {
    assert.equal(typeof field, 'string');
    assert.match(code, /^[a-z][a-z-]*$/);
    assert.ok(message.length > 10, message);
  }
  assertFinite(reply);
  return reply.problems;
}
