using Microsoft.AspNetCore.Components;
using Throwright.Engine.Model;
using Throwright.Web.Editing;

namespace Throwright.Web.Parts;

/// <summary>A page about one aircraft file. It follows the file: a change in any window shows in all.</summary>
public abstract class FilePage : ComponentBase, IDisposable
{
    [Parameter]
    public string File { get; set; } = "";

    [Inject]
    public AircraftFolder Folder { get; set; } = null!;

    [Inject]
    public Viewer Viewer { get; set; } = null!;

    [Inject]
    public Checks Checks { get; set; } = null!;

    [Inject]
    public NavigationManager Navigation { get; set; } = null!;

    protected EditingSession? Session { get; private set; }

    /// <summary>The aircraft in this window's units; null: the file can't be read.</summary>
    protected Aircraft? Aircraft
    {
        get
        {
            if (Session?.File is not { Aircraft: { } aircraft } file)
                return null;
            foreach (var (shape, skin) in file.Meshes)
                Checks.Take(shape, skin);
            return Viewer.Shown(aircraft);
        }
    }

    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected override void OnParametersSet()
    {
        var session = Folder.Open(File);
        if (ReferenceEquals(session, Session))
            return;
        Leave();
        Session = session;
        if (session is not null)
            session.Changed += Follow;
    }

    protected override void OnInitialized() => Viewer.Changed += Follow;

    protected virtual void Dispose(bool disposing)
    {
        Viewer.Changed -= Follow;
        Leave();
    }

    /// <summary>The text or the units changed.</summary>
    protected virtual void Refresh()
    {
    }

    protected string Link(string rest = "") => $"/a/{Uri.EscapeDataString(File)}{rest}";

    private void Leave()
    {
        if (Session is { } old)
            old.Changed -= Follow;
    }

    private void Follow() => _ = InvokeAsync(() =>
    {
        Refresh();
        StateHasChanged();
    });
}
