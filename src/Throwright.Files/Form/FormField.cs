using Throwright.Shapes.Quantities;

namespace Throwright.Files.Form;

/// <summary>How a value of the file is typed in.</summary>
public enum FieldForm
{
    /// <summary>A physical value with its unit, in quotes.</summary>
    Quantity,

    /// <summary>A text in quotes.</summary>
    Text,

    /// <summary>A text of several lines.</summary>
    Note,

    /// <summary>One of a few words.</summary>
    Word,

    /// <summary>One of a few whole numbers.</summary>
    Count,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>A list: each entry is of one form.</summary>
    List,

    /// <summary>Several members.</summary>
    Members,

    /// <summary>Anything else: typed as it stands in the file, e.g. [1, 0, 0].</summary>
    Json,
}

/// <summary>A member of the aircraft file as a person fills it in. Derived from the one description of the file.</summary>
/// <param name="Path">Names from the object asked for, e.g. "leverEnd.arm.radius".</param>
/// <param name="Name">The member's own name in the file.</param>
/// <param name="Meaning">What it is and how it is found out.</param>
/// <param name="Limits">What is accepted, e.g. "1 mm to 2 m"; may be empty.</param>
/// <param name="Otherwise">What holds when it is left out; empty: nothing is known.</param>
public sealed record FormField(string Path, string Name, string Meaning, FieldForm Form, string Limits, string Otherwise, bool IsRequired)
{
    /// <summary>Title of the object that holds it, e.g. "the arm at the lever end".</summary>
    public string Part { get; init; } = "";

    /// <summary>What a quantity measures.</summary>
    public QuantityKind? Quantity { get; init; }

    /// <summary>A tolerance may stand behind the value.</summary>
    public bool MayHaveTolerance { get; init; }

    /// <summary>An example as it is typed, without quotes; may be empty.</summary>
    public string Example { get; init; } = "";

    /// <summary>The words or numbers that are accepted, with what they mean.</summary>
    public IReadOnlyList<FieldChoice> Choices { get; init; } = [];

    /// <summary>Members of an object; of a list of objects, the members of one entry.</summary>
    public IReadOnlyList<FormField> Inside { get; init; } = [];

    /// <summary>Of a list: the form of one entry.</summary>
    public FieldForm Entry { get; init; }

    /// <summary>The short form beside the members of <see cref="Inside"/>, e.g. one angle in place of both ends; null: none.</summary>
    public FormField? Brief { get; init; }
}

/// <summary>One word that a field accepts.</summary>
public sealed record FieldChoice(string Text, string Meaning);
