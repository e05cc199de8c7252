"""Changed builds put through the same case and rules: what would carry this. It knows nothing of JSON, prose, HTTP."""
