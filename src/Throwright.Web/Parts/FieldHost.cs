using Throwright.Engine.Model;
using Throwright.Files.Form;
using Throwright.Web.Editing;

namespace Throwright.Web.Parts;

/// <summary>What the fields of a page share: the session, the values as they stand, and what is done with a value while it is typed.</summary>
public sealed class FieldHost(EditingSession session, Func<Display> display, Action<string> attempt, Action drop)
{
    private FileValues? values;
    private int of = -1;

    public EditingSession Session => session;

    /// <summary>Units of the window as they are now: a number without a unit is read in them.</summary>
    public Display Display => display();

    public FileValues Values
    {
        get
        {
            if (values is null || of != session.Revision)
                (values, of) = (FileValues.Of(session.Text), session.Revision);
            return values;
        }
    }

    /// <summary>The text of the file with what is being typed: shown, not kept.</summary>
    public void Try(string edited) => attempt(edited);

    /// <summary>Nothing is being typed any more.</summary>
    public void Drop() => drop();
}
