// Forces at a lift, and figures as they are written.

// curveAt is the nominal force at a lift [N]; at a drop the larger.
function curveAt(curve, lift) {
  let most = 0;
  for (let i = 1; i < curve.length; i++) {
    const a = curve[i - 1], b = curve[i];
    if (lift > a[0] + 1e-9 || lift < b[0] - 1e-9) continue;
    const t = a[0] > b[0] ? Math.min(1, Math.max(0, (a[0] - lift) / (a[0] - b[0]))) : a[1] > b[1] ? 0 : 1;
    most = Math.max(most, a[1] + t * (b[1] - a[1]));
  }
  return most;
}

// bandAt is what 90 of 100 assemblies lie between at a lift [N], or null.
function bandAt(band, lift) {
  for (let i = 1; i < band.length; i++) {
    const a = band[i - 1], b = band[i];
    if (lift > a[0] + 1e-9 || lift < b[0] - 1e-9 || a[0] <= b[0]) continue;
    const t = Math.min(1, Math.max(0, (a[0] - lift) / (a[0] - b[0])));
    return [a[1] + t * (b[1] - a[1]), a[3] + t * (b[3] - a[3])];
  }
  return null;
}

// figure writes a number with three digits, or whole from a hundred on.
function figure(v) {
  return Math.abs(v) >= 99.95 ? String(Math.round(v)) : String(Number(v.toPrecision(3)));
}
