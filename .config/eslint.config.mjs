import jsdoc from 'eslint-plugin-jsdoc';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  {
    ignores: [
      'dist/',
      'site/',
      'docs/api/',
      'docs/.vitepress/.temp/',
      'coverage/',
      'node_modules/',
      'tests/package/fixtures/',
    ],
  },
  {
    files: ['src/**/*.ts', 'tests/**/*.ts', '.config/*.ts', 'docs/.vitepress/live/**/*.ts'],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: {
      parserOptions: {
        project: './.config/tsconfig.lint.json',
        tsconfigRootDir: new URL('..', import.meta.url).pathname,
      },
    },
    rules: {
      '@typescript-eslint/strict-boolean-expressions': ['error', { allowNumber: false }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // inputs come from JavaScript too: checks that the types call needless are the border
      '@typescript-eslint/no-unnecessary-condition': 'off',
      // there are no enums (see below) and one class that callers meet; the two cost a quarter of the lint
      '@typescript-eslint/no-unsafe-enum-assignment': 'off',
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      '@typescript-eslint/dot-notation': 'off',
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'Export by name.' },
        { selector: 'ExportAllDeclaration', message: 'List the names that are exported.' },
        { selector: 'TSEnumDeclaration', message: 'Use a union of literals.' },
      ],
      'no-restricted-globals': ['error', 'Intl', 'Date', 'process', 'console'],
      eqeqeq: 'error',
      'max-lines': ['error', { max: 260, skipBlankLines: true, skipComments: true }],
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    // examples show a number in text as a reader would write it
    files: ['tests/generated/*.ts'],
    rules: { '@typescript-eslint/restrict-template-expressions': 'off' },
  },
  {
    // what runs in a page has its own types, and hands on to the library what a reader typed
    files: [
      'docs/.vitepress/live/**/*.ts',
      'tests/live/**/*.ts',
      'tests/built-site/live.test.ts',
      'tests/docs/live-parts.test.ts',
    ],
    languageOptions: {
      parserOptions: {
        project: './docs/.vitepress/live/tsconfig.json',
        tsconfigRootDir: new URL('..', import.meta.url).pathname,
      },
    },
    rules: { '@typescript-eslint/no-unsafe-type-assertion': 'off' },
  },
  {
    // a bundler hands a file on as its default export
    files: ['docs/.vitepress/live/raw-text.d.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  {
    files: ['src/**/*.ts'],
    plugins: { jsdoc },
    settings: { jsdoc: { mode: 'typescript' } },
    rules: {
      'jsdoc/require-jsdoc': [
        'error',
        {
          publicOnly: true,
          require: { FunctionDeclaration: true, ClassDeclaration: true },
          contexts: ['TSInterfaceDeclaration', 'TSTypeAliasDeclaration'],
          checkConstructors: false,
          exemptEmptyFunctions: false,
        },
      ],
      'jsdoc/check-tag-names': ['error', { definedTags: ['source'] }],
      'jsdoc/no-bad-blocks': 'error',
      'jsdoc/no-types': 'error',
    },
  },
  {
    // a list of names, made by a script; the one table of ranges
    files: ['src/index.ts', 'src/input/ranges.ts', 'src/job/schema/field-texts.ts'],
    rules: { 'max-lines': 'off' },
  },
  {
    files: ['tests/**/*.ts', '.config/*.ts'],
    rules: {
      'max-lines': 'off',
      'max-lines-per-function': 'off',
      'no-restricted-globals': 'off',
      'no-restricted-syntax': 'off',
      '@typescript-eslint/no-unsafe-type-assertion': 'off',
    },
  },
);
