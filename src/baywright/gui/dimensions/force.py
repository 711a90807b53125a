"""Which board thickness is in force where a measured batch stands in place of what the form says."""

from baywright.model.length import format_length
from baywright.model.project import Project
from baywright.model.stock import BoardRole

BOARDS = "construction.boards."


def thickness_in_force(project: Project, path: str) -> str:
    """The measured thickness that counts instead of the field at `path`, in words; empty where the field counts."""
    name = path.removeprefix(BOARDS)
    role = next((role for role in BoardRole if f"{role.value}_mm" == name), None)
    material = project.stock.material_of(role) if role is not None else None
    batch = material.batch if material is not None else None
    if material is None or batch is None:
        return ""
    measured = format_length(batch.measured_mm, project.unit)
    return f"In force: {measured}, measured (“{batch.name}” of {material.name})."
