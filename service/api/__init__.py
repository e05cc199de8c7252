"""HTTP, one endpoint a file: knows Flask, media types, limits and problems; judges nothing and reads no settings."""
