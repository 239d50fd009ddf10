/** Version of the package; test/pipeline/cli.test.ts holds it to package.json. */
export const version = '0.1.0';
