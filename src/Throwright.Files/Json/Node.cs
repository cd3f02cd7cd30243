using System.Globalization;
using System.Text;

namespace Throwright.Files.Json;

internal enum NodeKind
{
    Object,
    List,
    Text,
    Number,
    True,
    False,
    Null,

    /// <summary>Bare characters that are none of JSON's: NaN, .5, 1 3/4 in, 'single quotes'.</summary>
    Word,
}

/// <summary>One value of a file, with the place it was written at.</summary>
internal sealed class Node
{
    public required NodeKind Kind { get; init; }

    /// <summary>First character of the value in the file's text; End is one past its last.</summary>
    public required int Start { get; init; }
    public int End { get; set; }

    /// <summary>What a text says; for numbers and bare words, the characters as written.</summary>
    public string Text { get; init; } = "";

    /// <summary>Values of the members of an object, or the entries of a list, in the file's order.</summary>
    public List<Node> Items { get; } = [];

    /// <summary>The object or list that holds this value; null: the whole file.</summary>
    public Node? Parent { get; init; }

    /// <summary>Member name, if the parent is an object.</summary>
    public string? Name { get; init; }
    public int NameStart { get; init; }
    public int NameEnd { get; init; }

    /// <summary>Place in the list, from 0, if the parent is a list.</summary>
    public int Index { get; init; }

    /// <summary>Something is wrong with how it is written, and was told: what it says is not looked at.</summary>
    public bool HasSlip { get; set; }

    /// <summary>What the object describes, in words ("the arm at the lever end"); set when it is read.</summary>
    public string Title { get; set; } = "";

    /// <summary>The first member of this name, or null.</summary>
    public Node? Member(string name)
    {
        foreach (var item in Items)
        {
            if (item.Name == name)
                return item;
        }

        return null;
    }

    /// <summary>Where the value stands, as $.runs[2].leverEnd or $.points['valve-pivot'][1].</summary>
    public string Path()
    {
        var way = new Stack<Node>();
        for (var node = this; node.Parent is not null; node = node.Parent)
            way.Push(node);
        var path = new StringBuilder("$");
        foreach (var node in way)
        {
            if (node.Name is null)
                path.Append(CultureInfo.InvariantCulture, $"[{node.Index}]");
            else
                path.Append(JsonPath.Step(node.Name));
        }

        return path.ToString();
    }
}
