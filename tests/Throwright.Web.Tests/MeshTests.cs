using Throwright.Tests;
using Throwright.Web.Editing;

namespace Throwright.Web.Tests;

/// <summary>A mesh is a file of its own: written anew, it is read anew, and nothing that was proved with the old one is shown.</summary>
public sealed class MeshTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("throwright-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Mesh_WrittenAnew_IsReadAnew_AndItsClearanceWorkedOutAgain()
    {
        var examples = Path.Combine(ApprovedText.Root, "examples");
        File.Copy(Path.Combine(examples, "scanned-wall.throwright.json"), Path.Combine(root, "wall.throwright.json"));
        Directory.CreateDirectory(Path.Combine(root, "meshes"));
        foreach (var mesh in Directory.GetFiles(Path.Combine(examples, "meshes")))
            File.Copy(mesh, Path.Combine(root, "meshes", Path.GetFileName(mesh)));
        using var session = EditingSession.Open(Path.Combine(root, "wall.throwright.json"));
        var (shape, skin) = Assert.Single(session.File.Meshes);
        var (revision, aircraft) = (session.Revision, session.File.Aircraft);
        var checks = new Checks();
        checks.Take(shape, skin);
        var key = checks.ClearanceKey(aircraft!);
        Assert.False(session.LookAtDisk());
        Assert.Equal(revision, session.Revision);

        File.SetLastWriteTimeUtc(Path.Combine(root, shape.File), new DateTime(2031, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        Assert.True(session.LookAtDisk());
        Assert.NotSame(skin, session.File.Meshes[shape]);
        Assert.NotSame(aircraft, session.File.Aircraft);
        Assert.Equal(revision + 1, session.Revision);
        checks.Take(shape, session.File.Meshes[shape]);
        Assert.NotEqual(key, checks.ClearanceKey(session.File.Aircraft!));
        // The same once more is nothing new.
        key = checks.ClearanceKey(session.File.Aircraft!);
        checks.Take(shape, session.File.Meshes[shape]);
        Assert.Equal(key, checks.ClearanceKey(session.File.Aircraft!));
        Assert.False(session.LookAtDisk());
    }
}
