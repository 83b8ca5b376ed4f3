"""What the outside checks share: running the program, reading its drawings, a sheet solver."""
