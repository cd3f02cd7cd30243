using System.Text.Json.Nodes;
using Throwright.Files.Json;

namespace Throwright.Files.Description;

/// <summary>What a value of the file may be. Reading, the schema and the reference page all follow from it.</summary>
internal abstract class Shape
{
    /// <summary>What it is, for the reference page ("length", "list of bends").</summary>
    public abstract string Kind { get; }

    /// <summary>What is accepted, for the reference page ("1 mm to 2 m"); may be empty.</summary>
    public virtual string Limits => "";

    /// <summary>Objects that occur inside, for the reference page.</summary>
    public virtual IEnumerable<Shape> Inside => [];

    /// <summary>The part of the JSON Schema; definitions that are used many times are added to <paramref name="definitions"/>.</summary>
    public abstract JsonObject Schema(JsonObject definitions);

    /// <summary>Reads a value; false: it is at fault, and the reading says why.</summary>
    public abstract bool TryReadAny(Node node, Reading reading, out object? value);

    protected static JsonObject Reference(string definition) => new() { ["$ref"] = "#/$defs/" + definition };
}

/// <summary>A shape whose values become <typeparamref name="T"/>.</summary>
internal abstract class Shape<T> : Shape
    where T : notnull
{
    public sealed override bool TryReadAny(Node node, Reading reading, out object? value)
    {
        var read = TryRead(node, reading, out var typed);
        value = read ? typed : null;
        return read;
    }

    public abstract bool TryRead(Node node, Reading reading, out T value);
}
