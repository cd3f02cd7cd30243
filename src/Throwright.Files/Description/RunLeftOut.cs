namespace Throwright.Files.Description;

/// <summary>A run that could not be read: its place in the file, from 0, and its label, id, or "run 3".</summary>
public sealed record RunLeftOut(int Index, string Name);
