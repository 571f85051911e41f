import * as z from 'zod';

// Set before the first schema is built: zod then never tries `new Function`, which the page's policy forbids.
z.config({ jitless: true });

export { z };
