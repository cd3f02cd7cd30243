using Throwright.Formats.Drawing;
using Throwright.Shapes;

namespace Throwright.Formats.Characters;

/// <summary>Text in one tone; whoever prints it decides what the tone looks like.</summary>
public sealed record CharacterSpan(string Text, Tone Tone, bool Bold = false);

/// <summary>One line of a block.</summary>
public sealed record CharacterLine(EquatableList<CharacterSpan> Spans)
{
    public string Text => string.Concat(Spans.Select(s => s.Text));
}

/// <summary>Lines of characters of equal width, for a terminal or a text file.</summary>
public sealed record CharacterBlock(EquatableList<CharacterLine> Lines)
{
    /// <summary>The lines without tones, each ended by a line feed.</summary>
    public string Text => string.Concat(Lines.Select(l => l.Text + "\n"));

    public static CharacterBlock Stacked(params IEnumerable<CharacterBlock> blocks) => new(blocks.SelectMany(b => b.Lines).ToEquatableList());
}
